package doughtide.cli.shell;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import java.util.List;

/** The manual page, in the macros of man(7). */
public final class ManualPage {

  private final StringBuilder page = new StringBuilder();

  private ManualPage() {}

  /**
   * The page of the program with all its commands.
   *
   * @param version of the program
   * @param commands all of them
   */
  public static String of(String version, List<CommandSpec> commands) {
    ManualPage manual = new ManualPage();
    manual.head(version);
    commands.forEach(manual::command);
    manual.section("EXIT STATUS");
    manual.item("0", "All is well.");
    manual.item("2", "What was given cannot be used; one line on standard error says why.");
    manual.item("70", "The program is at fault.");
    return manual.page.toString();
  }

  private void head(String version) {
    macro(".TH DOUGHTIDE 1 \"\" \"doughtide " + escaped(version) + "\" \"\"");
    section("NAME");
    text("doughtide - when is the sourdough ready?");
    section("SYNOPSIS");
    macro(".B doughtide");
    text("COMMAND [OPTIONS]");
    macro(".br");
    macro(".B doughtide help");
    text("COMMAND");
    section("DESCRIPTION");
    text(
        "Computes the hours of a sourdough from its temperature, its share of starter and its"
            + " water. Quantities carry their unit: 25C or 77F, 20%, 850g, 1h30. Quote values"
            + " that hold spaces.");
    section("COMMANDS");
  }

  private void command(CommandSpec spec) {
    macro(".SS doughtide " + escaped((spec.name() + " " + spec.operands().words()).strip()));
    text(spec.summary() + ".");
    spec.actions().forEach(action -> item(action.operands(), action.summary()));
    spec.options().forEach(this::option);
    for (CommandSpec.Example example : spec.examples()) {
      macro(".PP");
      text(example.says() + ":");
      macro(".br");
      text(example.typed(spec.name()));
    }
    for (String note : spec.notes()) {
      macro(".PP");
      text(note);
    }
  }

  private void option(OptionSpec option) {
    item((option.typed() + " " + option.word()).strip(), option.explained());
  }

  private void item(String name, String text) {
    macro(".TP");
    macro(".B " + escaped(name));
    text(text);
  }

  private void section(String name) {
    macro(".SH " + name);
  }

  /** A dot or an apostrophe at the start of a line would be a macro. */
  private void text(String text) {
    String escaped = escaped(text);
    macro(escaped.startsWith(".") || escaped.startsWith("'") ? "\\&" + escaped : escaped);
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\e").replace("-", "\\-").replace("\n", " ");
  }

  private void macro(String line) {
    page.append(line).append('\n');
  }
}
