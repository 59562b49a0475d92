package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.session.Session;
import java.io.IOException;

/** One thing the program does. An instance is made for one call and thrown away. */
public interface Command {

  /** Name, options and examples: what help prints and the parser accepts. */
  CommandSpec spec();

  /**
   * Does the work.
   *
   * @param arguments what was given, already checked against {@link #spec()}
   * @param session where to print, and the surroundings
   * @throws doughtide.core.quantity.InputException if something given cannot be used
   * @throws IOException if a file cannot be read or written
   */
  void run(Arguments arguments, Session session) throws IOException;
}
