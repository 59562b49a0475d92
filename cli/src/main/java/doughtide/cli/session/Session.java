package doughtide.cli.session;

import java.io.PrintStream;

/**
 * One call of the program.
 *
 * @param out for the answer
 * @param err for progress and remarks that are not part of the answer
 * @param environment zone, clock, folder
 */
public record Session(PrintStream out, PrintStream err, Environment environment) {}
