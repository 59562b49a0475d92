package doughtide.cli.file;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.session.Environment;
import doughtide.core.document.FlourDocument;
import doughtide.core.flourtrial.FlourRecord;
import java.util.Optional;

/** The file that holds the record of one flour. */
public final class FlourFile {

  public static final String OPTION = "flour-file";

  private FlourFile() {}

  /** The option with which other commands take a record. */
  public static OptionSpec option() {
    return option("Instead of --flour: the");
  }

  /** The option of a command that asks for no flour, only for the water it takes. */
  public static OptionSpec optionForHydration() {
    return option("Takes name and hydration from the");
  }

  private static OptionSpec option(String lead) {
    return OptionSpec.value(
        OPTION,
        "FILE",
        "harrow.txt",
        lead + " record of a flour that doughtide flour save has written.");
  }

  /** The record that was named, if one was. */
  public static Optional<FlourRecord> read(Arguments arguments, Environment environment) {
    return arguments.text(OPTION).map(name -> read("--" + OPTION, name, environment));
  }

  /**
   * Reads a record.
   *
   * @param option what the file was named with, for messages
   * @param name the file
   * @throws doughtide.core.quantity.InputException with file and line if a line cannot be used
   */
  public static FlourRecord read(String option, String name, Environment environment) {
    return DocumentFile.read(
        option, name, environment, lines -> FlourDocument.read(lines, environment.catalogue()));
  }
}
