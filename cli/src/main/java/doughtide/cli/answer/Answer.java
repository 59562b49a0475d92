package doughtide.cli.answer;

import doughtide.cli.args.Speech;
import java.io.PrintStream;
import java.util.List;
import java.util.function.Supplier;

/**
 * What a command found out: a headline, and under it a tree of sections and quantities. Text, JSON
 * and CSV are three ways to write the same tree.
 *
 * @param command its name
 * @param version of its JSON; raised whenever a field changes its name or meaning
 * @param headline the answer in one or two sentences, each line of it a line of the page
 * @param body all of it
 * @param table what CSV holds
 * @param speech the language of its text
 * @param kitchen values that came from the kitchen, as {@code room 19C}; JSON tells them
 */
public record Answer(
    String command,
    int version,
    String headline,
    Section body,
    Supplier<Listing> table,
    Speech speech,
    List<String> kitchen) {

  /** Copies the list. */
  public Answer {
    kitchen = List.copyOf(kitchen);
  }

  /** An answer without a form in CSV. */
  public static Answer of(String command, int version, String headline, Section.Builder body) {
    return new Answer(
        command, version, headline, body.build(), Answer::none, body.speech(), List.of());
  }

  /** The same with a table for CSV. */
  public Answer withTable(Supplier<Listing> rows) {
    return new Answer(command, version, headline, body, rows, speech, kitchen);
  }

  /** The same, telling what came from the kitchen. */
  public Answer fromKitchen(List<String> values) {
    return new Answer(command, version, headline, body, table, speech, values);
  }

  private static Listing none() {
    throw new IllegalStateException("the command refuses --format csv");
  }

  /** Writes it as text. */
  public void text(PrintStream out) {
    AnswerText.of(this).forEach(out::println);
  }

  /** Writes it as one JSON object. */
  public void json(PrintStream out) {
    AnswerJson.write(this, out);
  }

  /** Writes its table as CSV. */
  public void csv(PrintStream out) {
    AnswerCsv.write(table.get(), out);
  }
}
