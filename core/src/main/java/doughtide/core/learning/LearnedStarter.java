package doughtide.core.learning;

import doughtide.core.Internal;
import doughtide.core.forecast.Belief;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * What is kept of a baker and starter between bakes.
 *
 * @param programVersion the version that learned it
 * @param dataDigest SHA-256 of the bakes, 64 hexadecimal digits
 * @param bakes number of bakes
 * @param readings number of readings
 * @param prior what was believed before
 * @param posterior what is believed of the next bake
 * @param jar how the jar misreads at the next bake
 * @param mixerFrictionCelsius by name of the mixer: how much it warms a dough, −10…30 °C, negative
 *     where hands cool it; may be empty
 */
public record LearnedStarter(
    String programVersion,
    String dataDigest,
    int bakes,
    int readings,
    @Internal LearningPrior prior,
    Belief posterior,
    JarError jar,
    Map<String, Double> mixerFrictionCelsius)
    implements Serializable {

  /**
   * @param programVersion the version that learned it, 1 to 80 characters in one line
   * @param dataDigest SHA-256 of the bakes, 64 hexadecimal digits
   * @param bakes number of bakes
   * @param readings number of readings
   * @param prior what was believed before
   * @param posterior what is believed of the next bake
   * @param jar how the jar misreads at the next bake
   * @param mixerFrictionCelsius by name of the mixer: how much it warms a dough, −10…30 °C,
   *     negative where hands cool it
   * @throws InputException if the version is not one line, the digest is none or a number is out of
   *     range
   */
  public LearnedStarter {
    Checks.given("jar", jar);
    Checks.given("posterior", posterior);
    Checks.given("prior", prior);
    Checks.given("program version", programVersion);
    if (programVersion.isBlank() || !programVersion.matches("\\P{Cc}{1,80}")) {
      throw new InputException(
          "starter.version",
          "the program version of a starter must have 1 to 80 characters in one line: name the"
              + " version of your program, for example 1.0");
    }
    Checks.given("data digest", dataDigest);
    if (!dataDigest.matches("[0-9a-f]{64}")) {
      throw new InputException(
          "starter.digest",
          "the data digest of a starter must have 64 hexadecimal digits: learn it again");
    }
    Checks.inRange("number of bakes", bakes, 0, 1e9, "");
    Checks.inRange("number of readings", readings, 0, 1e9, "");
    mixerFrictionCelsius.forEach(
        (name, kelvin) ->
            Checks.inRange("friction of mixer '" + name + "'", kelvin, -10, 30, "°C"));
    mixerFrictionCelsius = Collections.unmodifiableMap(new TreeMap<>(mixerFrictionCelsius));
  }

  /** In a line, for logs: from how much it was learned, and what is believed. */
  @Override
  public String toString() {
    return "version "
        + programVersion
        + ", bakes "
        + bakes
        + ", readings "
        + readings
        + ", mixers "
        + mixerFrictionCelsius
        + ": "
        + posterior;
  }

  static LearnedStarter of(Learned learned, String programVersion) {
    return new LearnedStarter(
        programVersion,
        learned.dataDigest(),
        learned.bakes(),
        learned.readings(),
        learned.prior(),
        learned.belief(),
        learned.jar(),
        Map.of());
  }

  /**
   * {@return the same with what is known of the mixers}
   *
   * @param celsiusByMixer warming by each mixer, K, by its name
   */
  public LearnedStarter withMixerFriction(Map<String, Double> celsiusByMixer) {
    return new LearnedStarter(
        programVersion, dataDigest, bakes, readings, prior, posterior, jar, celsiusByMixer);
  }
}
