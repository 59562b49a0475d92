package doughtide.cli;

import java.util.Optional;

/** Entry point of the command line. */
public final class Main {

  private Main() {}

  /**
   * Prints the version.
   *
   * @param args not used yet
   */
  public static void main(String[] args) {
    System.out.println(versionLine());
  }

  /** Name and version, as the manifest of the jar gives it. */
  static String versionLine() {
    return "doughtide "
        + Optional.ofNullable(Main.class.getPackage().getImplementationVersion())
            .orElse("(unpackaged)");
  }
}
