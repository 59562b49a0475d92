package doughtide.cli.args;

import java.util.List;

/** Help as text of at most 80 columns. */
public final class HelpPage {

  /** Help of one command fits a screen of so many lines. */
  public static final int BRIEF_LINES = 40;

  private static final int WIDTH = 80;
  private static final int MOST_EXAMPLES = 3;
  private static final int WIDEST_OPTION = 28;
  private static final int INDENT = 4;

  private final StringBuilder page = new StringBuilder();

  private HelpPage() {}

  /** The page of the whole program. */
  public static String ofProgram(List<CommandSpec> commands) {
    HelpPage help = new HelpPage();
    help.line("doughtide: when is the sourdough ready?");
    help.line("");
    help.line("Usage: doughtide COMMAND [OPTIONS]");
    help.line("       doughtide COMMAND --help    what most people need, on one screen");
    help.line("       doughtide help COMMAND      all of it");
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

  /**
   * What a person sees who types the program's name alone: questions, and the line to type for
   * each.
   *
   * @param questions each with the words after the program's name
   */
  public static String ofQuestions(List<CommandSpec.Example> questions) {
    HelpPage help = new HelpPage();
    help.line("doughtide: when is the sourdough ready?");
    for (CommandSpec.Example question : questions) {
      help.line("");
      help.line(question.says());
      help.command(question.typed(""));
    }
    help.line("");
    help.line("All commands: doughtide --help");
    return help.page.toString();
  }

  /** One screen: the options most people need and some examples; all of it where that fits. */
  public static String brief(CommandSpec spec) {
    String all = of(spec);
    if (all.lines().count() <= BRIEF_LINES) {
      return all;
    }
    HelpPage help = new HelpPage();
    help.wrapped("doughtide " + spec.name() + ": " + spec.summary(), 0);
    help.line("");
    help.wrapped(usage(spec), 11 + spec.name().length());
    help.actions(spec);
    help.line("");
    List<OptionSpec> shown = spec.everydayOptions();
    int widest = shown.stream().mapToInt(each -> left(each).length()).max().orElse(0) + 2;
    int column = Math.min(widest, WIDEST_OPTION);
    shown.forEach(each -> help.entry(left(each), each.firstSentence(), column));
    help.line("");
    spec.examples().stream().limit(MOST_EXAMPLES).forEach(each -> help.example(spec, each));
    help.line("");
    help.line("All options, examples and notes: doughtide help " + spec.name());
    return help.page.toString();
  }

  private static String left(OptionSpec option) {
    return "  " + option.typedExample();
  }

  /** The page of one thing a command does. */
  public static String of(CommandSpec spec, CommandSpec.Action action) {
    HelpPage help = new HelpPage();
    help.wrapped("doughtide " + spec.name() + " " + action.name() + ": " + action.summary(), 0);
    help.line("");
    help.line("Usage: doughtide " + spec.name() + " " + action.operands() + " [OPTIONS]");
    help.line("");
    help.line("Options");
    action.options().forEach(name -> help.option(spec.option(name)));
    List<CommandSpec.Example> own =
        spec.examples().stream()
            .filter(each -> each.arguments().get(0).equals(action.name()))
            .toList();
    if (!own.isEmpty()) {
      help.line("");
      own.forEach(each -> help.example(spec, each));
    }
    return help.page.toString();
  }

  private void actions(CommandSpec spec) {
    if (!spec.actions().isEmpty()) {
      line("");
      int column = spec.actions().stream().mapToInt(a -> a.operands().length()).max().orElse(0);
      spec.actions().forEach(each -> entry("  " + each.operands(), each.summary(), column + 4));
      String first = spec.actions().get(0).name();
      spec.action(first)
          .ifPresent(each -> line("  (doughtide " + spec.name() + " " + first + " --help)"));
    }
  }

  /** The whole page of one command. */
  public static String of(CommandSpec spec) {
    HelpPage help = new HelpPage();
    help.wrapped("doughtide " + spec.name() + ": " + spec.summary(), 0);
    help.line("");
    help.wrapped(usage(spec), 11 + spec.name().length());
    help.actions(spec);
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
    String word = option.takesValue() ? " " + option.word() : "";
    line("  " + option.typed() + word);
    wrapped(" ".repeat(2 * INDENT) + option.explained(), 2 * INDENT);
  }

  private void example(CommandSpec spec, CommandSpec.Example example) {
    wrapped("  " + example.says() + ":", 2);
    command(example.typed(spec.name()));
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
