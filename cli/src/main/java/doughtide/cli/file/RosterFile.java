package doughtide.cli.file;

import doughtide.cli.session.Environment;
import doughtide.core.document.RosterDocument;
import doughtide.report.words.Language;

/** The roster of a class as a file. */
public final class RosterFile {

  /** Names the file. */
  public static final String OPTION = "roster";

  private RosterFile() {}

  /**
   * Reads a roster whose languages are those of the pages.
   *
   * @param name as typed
   * @throws doughtide.core.quantity.InputException with file and line if a line cannot be used
   */
  public static RosterDocument read(String name, Environment environment) {
    return DocumentFile.read(
        "--" + OPTION,
        name,
        environment,
        lines -> RosterDocument.read(lines, environment.catalogue(), Language::of));
  }
}
