package doughtide.cli.args;

import doughtide.core.quantity.ShellWord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a command accepts.
 *
 * @param name as typed
 * @param summary one line for the list of commands
 * @param operands the words after the options
 * @param options in the order help prints them
 * @param examples arguments after the command's name, ready to run; the first stands in error lines
 * @param notes sentences at the end of help: cautions and conventions
 * @param everyday names of the options that most people need; help shows these first
 * @param actions what the first operand may be
 */
public record CommandSpec(
    String name,
    String summary,
    Operands operands,
    List<OptionSpec> options,
    List<Example> examples,
    List<String> notes,
    List<String> everyday,
    List<Action> actions) {

  /**
   * One of the things a command does.
   *
   * @param operands as in the usage line, the action's name first
   * @param summary one line
   * @param options names of those that say something with it, for a help page of its own; none
   *     where it has no such page
   */
  public record Action(String operands, String summary, List<String> options) {
    /** The word typed after the command's name. */
    public String name() {
      return operands.split(" ", 2)[0];
    }
  }

  /**
   * The words after the options.
   *
   * @param words as in the usage line, empty for none
   * @param least how many must be given
   * @param most how many may be given
   */
  public record Operands(String words, int least, int most) {
    static final Operands NONE = new Operands("", 0, 0);
  }

  /**
   * An example of use.
   *
   * @param says what it does
   * @param arguments the words after the command's name
   */
  public record Example(String says, List<String> arguments) {
    static Example of(String says, String... arguments) {
      return new Example(says, List.of(arguments));
    }

    /**
     * The whole line as typed.
     *
     * @param command its name; empty where the arguments begin with it
     */
    public String typed(String command) {
      StringBuilder line = new StringBuilder(("doughtide " + command).strip());
      arguments.forEach(word -> line.append(' ').append(ShellWord.of(word)));
      return line.toString();
    }
  }

  public CommandSpec {
    options = List.copyOf(options);
    examples = List.copyOf(examples);
    notes = List.copyOf(notes);
    everyday = List.copyOf(everyday);
    actions = List.copyOf(actions);
  }

  /** The action of this name that has a help page of its own. */
  public Optional<Action> action(String word) {
    return actions.stream()
        .filter(each -> each.name().equals(word) && !each.options().isEmpty())
        .findFirst();
  }

  /** The options that most people need; all of them where none are marked. */
  public List<OptionSpec> everydayOptions() {
    return everyday.isEmpty() ? options : everyday.stream().map(this::option).toList();
  }

  /** The same with more options at the end. */
  public CommandSpec with(List<OptionSpec> more) {
    List<OptionSpec> all = new ArrayList<>(options);
    all.addAll(more);
    return new CommandSpec(name, summary, operands, all, examples, notes, everyday, actions);
  }

  public static Builder named(String name, String summary) {
    return new Builder(name, summary);
  }

  /** Whether there is an option of this name. */
  public boolean has(String optionName) {
    for (OptionSpec option : options) {
      if (option.name().equals(optionName)) {
        return true;
      }
    }
    return false;
  }

  /** The option of this name. */
  public OptionSpec option(String optionName) {
    for (OptionSpec option : options) {
      if (option.name().equals(optionName)) {
        return option;
      }
    }
    throw new IllegalArgumentException(name + " has no option " + optionName);
  }

  /** Collects the parts of a specification. */
  public static final class Builder {
    private final String name;
    private final String summary;
    private Operands operands = Operands.NONE;
    private final List<OptionSpec> options = new ArrayList<>();
    private final List<Example> examples = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final List<Action> actions = new ArrayList<>();
    private List<String> everyday = List.of();

    private Builder(String name, String summary) {
      this.name = name;
      this.summary = summary;
    }

    public Builder operands(String words, int least, int most) {
      operands = new Operands(words, least, most);
      return this;
    }

    public Builder options(OptionSpec... more) {
      return options(List.of(more));
    }

    public Builder options(List<OptionSpec> more) {
      options.addAll(more);
      return this;
    }

    public Builder example(String says, String... arguments) {
      examples.add(Example.of(says, arguments));
      return this;
    }

    public Builder note(String sentence) {
      notes.add(sentence);
      return this;
    }

    /** The options that most people need, in the order help shows them. */
    public Builder everyday(String... names) {
      everyday = List.of(names);
      return this;
    }

    /** A thing the command does, with the options that say something with it. */
    public Builder action(String words, String says, List<String> names) {
      actions.add(new Action(words, says, names));
      return this;
    }

    public CommandSpec build() {
      return new CommandSpec(name, summary, operands, options, examples, notes, everyday, actions);
    }
  }
}
