package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.StarterFile;
import doughtide.cli.session.Environment;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Shorten;
import doughtide.core.thermal.Warming;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The mixers in the baker's file: how much each really warms a dough. */
public final class MixerOptions {

  /** How a sentence names mixing by hand. */
  public static final String BY_HAND = "by hand";

  private static final String MIXER = "mixer";
  private static final String HANDS = "hands";
  private static final String SAVE = "save";
  private static final double DECIMALS = 100;

  /** As {@link LearnedStarter} allows. */
  private static final double LEAST_KELVIN = -10;

  private static final double MOST_KELVIN = 30;

  private MixerOptions() {}

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
                MIXER,
                "NAME",
                "spiral",
                "The mixer that mixes, or hands: with --got its warming is kept by --save, later it"
                    + " is taken from --starter-file instead of --friction or --warming.")
            .withDefault(HANDS),
        StarterOptions.file(),
        OptionSpec.value(
            SAVE,
            "FILE",
            "mine.txt",
            "With --got: keeps --starter-file and the mixer in another file of this baker."),
        KeepOptions.spec(),
        OutputOptions.overwrite());
  }

  /** The warming kept for the mixer named, where one is named and nothing was measured just now. */
  public static Optional<WaterOptions.SaidMixing> known(
      Arguments arguments, Environment environment) {
    if (arguments.has(WaterOptions.GOT)) {
      return Optional.empty();
    }
    String mixer = arguments.text(MIXER).map(String::strip).orElse(HANDS);
    if (mixer.equals(HANDS) && !arguments.has(StarterOptions.STARTER_FILE)) {
      return Optional.empty();
    }
    Map<String, Double> kept = starter(arguments, environment).mixerFrictionCelsius();
    if (mixer.equals(HANDS) && !kept.containsKey(mixer)) {
      return Optional.empty();
    }
    if (!kept.containsKey(mixer)) {
      throw new InputException(
          "--mixer '"
              + Shorten.to(mixer, 40)
              + "' is not in the starter file"
              + (kept.isEmpty() ? "" : ", which has " + String.join(", ", kept.keySet()))
              + ": measure it with --pour and --got, and keep it with --save");
    }
    return Optional.of(
        new WaterOptions.SaidMixing(
            WaterOptions.Said.WARMING,
            new Warming(kept.get(mixer)),
            mixer.equals(HANDS) ? BY_HAND : "with '" + Shorten.to(mixer, 40) + "'"));
  }

  private static LearnedStarter starter(Arguments arguments, Environment environment) {
    return StarterOptions.starter(arguments, environment)
        .orElseThrow(
            () ->
                new InputException(
                    "--mixer needs the baker's file: add --starter-file starter.txt as kept by"
                        + " doughtide learn"));
  }

  /**
   * Keeps what mixing did, where {@code --save} asks for it.
   *
   * @return the line to print
   */
  public static Optional<String> keep(Arguments arguments, Environment environment, Warming mixing)
      throws IOException {
    if (KeepOptions.asked(arguments)) {
      KeepOptions.keep(
          arguments,
          environment,
          WaterOptions.WARMING,
          Checks.plain(Math.rint(mixing.kelvin() * DECIMALS) / DECIMALS) + "C");
      if (arguments.has(MIXER)) {
        String mixer = arguments.text(MIXER).orElse(HANDS).strip();
        KeepOptions.keep(arguments, environment, MIXER, mixer);
      }
    }
    Optional<OutputFile> file = OutputOptions.file(SAVE, arguments, environment);
    if (file.isEmpty()) {
      return Optional.empty();
    }
    String mixer =
        arguments
            .text(MIXER)
            .map(String::strip)
            .filter(name -> !name.isEmpty())
            .orElseThrow(
                () ->
                    new InputException(
                        "--save needs the mixer's name: add for example --mixer spiral"));
    LearnedStarter starter = starter(arguments, environment);
    if (!(mixing.kelvin() >= LEAST_KELVIN && mixing.kelvin() <= MOST_KELVIN)) {
      throw new InputException(
          "--save keeps a mixer that warms a dough by "
              + Checks.plain(LEAST_KELVIN)
              + "…"
              + Checks.plain(MOST_KELVIN)
              + " °C; by --pour, --got and --room this one did "
              + Checks.plain(Math.rint(mixing.kelvin() * DECIMALS) / DECIMALS)
              + " °C: measure again, or leave --save out");
    }
    Map<String, Double> mixers = new TreeMap<>(starter.mixerFrictionCelsius());
    mixers.put(mixer, Math.rint(mixing.kelvin() * DECIMALS) / DECIMALS);
    StarterFile.write(starter.withMixerFriction(mixers), file.get());
    return Optional.of("Saved in " + FileProblem.quoted(file.get().shown()));
  }

  /** Refuses what does not go together. */
  public static void check(Arguments arguments) {
    if (KeepOptions.asked(arguments) && !arguments.has(WaterOptions.GOT)) {
      throw new InputException(
          "--keep-in-kitchen keeps what mixing did: add --pour and --got, or leave it out");
    }
    if (arguments.has(SAVE) && !arguments.has(WaterOptions.GOT)) {
      throw new InputException(
          "--save keeps what mixing did: add --pour and --got, or leave it out");
    }
  }
}
