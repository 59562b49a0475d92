package doughtide.cli;

import java.util.Optional;

/**
 * One option of a command.
 *
 * @param name without the two dashes
 * @param word what stands for the value in help, empty if the option takes none
 * @param example a value that is accepted, empty if the option takes none
 * @param description one sentence, with units
 * @param defaultText what applies when the option is not given
 * @param use whether it must, may or may repeatedly be given
 */
record OptionSpec(
    String name,
    String word,
    String example,
    String description,
    Optional<String> defaultText,
    Use use) {

  /** How often an option is given. */
  enum Use {
    OPTIONAL,
    REQUIRED,
    REPEATABLE
  }

  /** An option with a value. */
  static OptionSpec value(String name, String word, String example, String description) {
    return new OptionSpec(name, word, example, description, Optional.empty(), Use.OPTIONAL);
  }

  /** An option without a value. */
  static OptionSpec flag(String name, String description) {
    return new OptionSpec(name, "", "", description, Optional.empty(), Use.OPTIONAL);
  }

  OptionSpec withDefault(String text) {
    return new OptionSpec(name, word, example, description, Optional.of(text), use);
  }

  OptionSpec required() {
    return new OptionSpec(name, word, example, description, defaultText, Use.REQUIRED);
  }

  OptionSpec repeatable() {
    return new OptionSpec(name, word, example, description, defaultText, Use.REPEATABLE);
  }

  boolean takesValue() {
    return !word.isEmpty();
  }

  /** The option as typed, with two dashes. */
  String typed() {
    return "--" + name;
  }

  /** The option with its example value, ready to copy. */
  String typedExample() {
    return takesValue() ? typed() + " " + ShellWord.of(example) : typed();
  }
}
