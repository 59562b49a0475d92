package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.session.Session;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.TodayUpdate;
import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.Optional;

/**
 * A dough that is rising now, described by its file of readings.
 *
 * @param file the dough and its readings so far
 * @param starter what was learned of the starter before, if a file was given
 * @param update what is believed of the dough with its readings
 */
public record DoughInHand(ReadingsFile file, Optional<LearnedStarter> starter, TodayUpdate update) {

  /**
   * Reads the file named by --readings and updates.
   *
   * @param forecaster what is believed before the readings
   * @param described options that the file takes the place of
   * @throws InputException if one of them was given, or the file cannot be used
   */
  public static DoughInHand read(
      Arguments arguments, RiseForecaster forecaster, List<OptionSpec> described, Session session) {
    for (OptionSpec option : described) {
      if (arguments.has(option.name())) {
        throw new InputException(
            option.typed()
                + " is not used together with --"
                + StarterOptions.READINGS
                + ": the file describes the dough at its top");
      }
    }
    String name = arguments.text(StarterOptions.READINGS).orElseThrow();
    ReadingsFile file =
        ReadingsFile.read(
            "--" + StarterOptions.READINGS, name, ReadingsFile.badLines(arguments), session);
    Optional<LearnedStarter> starter = StarterOptions.starter(arguments, session.environment());
    JarError jar = starter.map(LearnedStarter::jar).orElseGet(JarError::standard);
    return new DoughInHand(file, starter, TodayUpdate.of(forecaster, jar, file.bake()));
  }
}
