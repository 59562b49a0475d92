package doughtide.cli.args;

import doughtide.core.quantity.ShellWord;
import java.util.List;

/** Help as text of at most 80 columns. */
public final class HelpPage {

  private static final int WIDTH = 80;
  private static final int INDENT = 4;

  private final StringBuilder page = new StringBuilder();

  private HelpPage() {}

  /** The page of the whole program. */
  public static String ofProgram(List<CommandSpec> commands) {
    HelpPage help = new HelpPage();
    help.line("doughtide: when is the sourdough ready?");
    help.line("");
    help.line("Usage: doughtide COMMAND [OPTIONS]");
    help.line("       doughtide COMMAND --help");
    help.line("       doughtide --help | --version");
    help.line("");
    help.line("Commands");
    int column = commands.stream().mapToInt(spec -> spec.name().length()).max().orElse(0) + 4;
    commands.forEach(spec -> help.entry("  " + spec.name(), spec.summary(), column));
    help.line("");
    help.wrapped(
        "Quantities carry their unit: 25C or 77F, 20%, 850g, 1h30. A decimal point or a"
            + " decimal comma will do. Quote values that hold spaces.",
        0);
    return help.page.toString();
  }

  /** The page of one command. */
  public static String of(CommandSpec spec) {
    HelpPage help = new HelpPage();
    help.wrapped("doughtide " + spec.name() + ": " + spec.summary(), 0);
    help.line("");
    help.wrapped(usage(spec), 11 + spec.name().length());
    if (!spec.options().isEmpty()) {
      help.line("");
      help.line("Options");
      spec.options().forEach(help::option);
    }
    help.line("");
    help.line(spec.examples().size() == 1 ? "Example" : "Examples");
    spec.examples().forEach(example -> help.example(spec, example));
    if (!spec.notes().isEmpty()) {
      help.line("");
      spec.notes().forEach(note -> help.wrapped(note, 0));
    }
    return help.page.toString();
  }

  private static String usage(CommandSpec spec) {
    StringBuilder usage = new StringBuilder("Usage: doughtide ").append(spec.name());
    for (OptionSpec option : spec.options()) {
      if (option.use() == OptionSpec.Use.REQUIRED) {
        usage.append(' ').append(option.typed()).append(' ').append(option.word());
      }
    }
    usage.append(" [OPTIONS]");
    if (!spec.operands().words().isEmpty()) {
      usage.append(' ').append(spec.operands().words());
    }
    return usage.toString();
  }

  private void option(OptionSpec option) {
    StringBuilder text = new StringBuilder(option.description());
    if (option.takesValue()) {
      text.append(" Example: ").append(ShellWord.of(option.example())).append('.');
    }
    option.defaultText().ifPresent(value -> text.append(" Default: ").append(value).append('.'));
    String word = option.takesValue() ? " " + option.word() : "";
    line("  " + option.typed() + word);
    wrapped(" ".repeat(2 * INDENT) + text, 2 * INDENT);
  }

  private void example(CommandSpec spec, CommandSpec.Example example) {
    wrapped("  " + example.says() + ":", 2);
    StringBuilder typed = new StringBuilder("doughtide ").append(spec.name());
    example.arguments().forEach(word -> typed.append(' ').append(ShellWord.of(word)));
    command(typed.toString());
  }

  /** A command over several lines, continued the way a shell reads it. */
  private void command(String typed) {
    String rest = " ".repeat(INDENT) + typed;
    while (rest.length() > WIDTH) {
      int cut = rest.lastIndexOf(" --", WIDTH - 2);
      if (cut <= 2 * INDENT) {
        break;
      }
      line(rest.substring(0, cut) + " \\");
      rest = " ".repeat(2 * INDENT) + rest.substring(cut + 1);
    }
    line(rest);
  }

  private void entry(String left, String right, int column) {
    wrapped(left + " ".repeat(Math.max(1, column - left.length())) + right, column);
  }

  private void wrapped(String text, int hanging) {
    String rest = text;
    while (rest.length() > WIDTH) {
      int cut = rest.lastIndexOf(' ', WIDTH);
      if (cut <= hanging) {
        break;
      }
      line(rest.substring(0, cut).stripTrailing());
      rest = " ".repeat(hanging) + rest.substring(cut + 1);
    }
    line(rest);
  }

  private void line(String text) {
    page.append(text).append('\n');
  }
}
