package doughtide.cli.options;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.KitchenFile;
import doughtide.cli.file.OutputFile;
import doughtide.cli.session.Environment;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/** Puts what a command teaches into the baker's kitchen, where that is asked for. */
public final class KeepOptions {

  /** The name of the option. */
  static final String NAME = "keep-in-kitchen";

  private KeepOptions() {}

  /** The option of a command that teaches something. */
  public static OptionSpec spec() {
    return OptionSpec.flag(
        NAME, "Keeps what this teaches in the kitchen file, for every later call.");
  }

  /** Whether it is asked for. */
  public static boolean asked(Arguments arguments) {
    if (arguments.has(NAME)) {
      arguments.exclusive(NAME, KitchenOptions.NO_KITCHEN);
    }
    return arguments.has(NAME);
  }

  /**
   * Keeps a value in the kitchen.
   *
   * @param key of the kitchen
   * @param value as a person would type it
   */
  public static void keep(Arguments arguments, Environment environment, String key, String value) {
    KitchenFile kitchen = kitchen(arguments, environment);
    try {
      kitchen.set(Map.of(key, Optional.of(value)), environment);
    } catch (IOException e) {
      throw FileProblem.of(kitchen.shown(), e);
    }
    arguments.note("kept in the kitchen " + kitchen.shown() + ": " + key + ": " + value);
  }

  /** Keeps the name of a file in the kitchen, as it is seen from there. */
  public static void keepFile(
      Arguments arguments, Environment environment, String key, OutputFile file) {
    keep(arguments, environment, key, kitchen(arguments, environment).nameOf(file.path()));
  }

  /**
   * The file for what is learned where none is named: beside the kitchen, replaced each time.
   *
   * @param name for example {@code starter.txt}
   */
  public static OutputFile besideKitchen(
      Arguments arguments, Environment environment, String name) {
    KitchenFile kitchen = kitchen(arguments, environment);
    try {
      kitchen.makeFolder();
    } catch (IOException e) {
      throw FileProblem.of(kitchen.shown(), e);
    }
    return OutputFile.of("--" + NAME, kitchen.beside(name), OutputFile.Existing.RENEW, environment);
  }

  private static KitchenFile kitchen(Arguments arguments, Environment environment) {
    return KitchenFile.of(arguments.text(KitchenFile.OPTION), environment)
        .map(file -> new KitchenFile(file.path(), file.source(), false))
        .orElseThrow(
            () ->
                new InputException(
                    "there is no place for settings here: name the file, for example --kitchen"
                        + " kitchen.txt"));
  }
}
