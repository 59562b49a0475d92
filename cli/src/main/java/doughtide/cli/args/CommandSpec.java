package doughtide.cli.args;

import java.util.ArrayList;
import java.util.List;

/**
 * What a command accepts.
 *
 * @param name as typed
 * @param summary one line for the list of commands
 * @param operands the words after the options
 * @param options in the order help prints them
 * @param examples arguments after the command's name, ready to run; the first stands in error lines
 * @param notes sentences at the end of help: cautions and conventions
 */
public record CommandSpec(
    String name,
    String summary,
    Operands operands,
    List<OptionSpec> options,
    List<Example> examples,
    List<String> notes) {

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
  }

  public CommandSpec {
    options = List.copyOf(options);
    examples = List.copyOf(examples);
    notes = List.copyOf(notes);
  }

  public static Builder named(String name, String summary) {
    return new Builder(name, summary);
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

    public CommandSpec build() {
      return new CommandSpec(name, summary, operands, options, examples, notes);
    }
  }
}
