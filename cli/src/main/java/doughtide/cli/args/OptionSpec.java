package doughtide.cli.args;

import doughtide.core.quantity.ShellWord;
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
public record OptionSpec(
    String name,
    String word,
    String example,
    String description,
    Optional<String> defaultText,
    Use use) {

  private static final int LONG_SENTENCE = 100;

  /** How often an option is given. */
  public enum Use {
    OPTIONAL,
    REQUIRED,
    REPEATABLE
  }

  /** An option with a value. */
  public static OptionSpec value(String name, String word, String example, String description) {
    return new OptionSpec(name, word, example, description, Optional.empty(), Use.OPTIONAL);
  }

  /** An option without a value. */
  public static OptionSpec flag(String name, String description) {
    return new OptionSpec(name, "", "", description, Optional.empty(), Use.OPTIONAL);
  }

  public OptionSpec withDefault(String text) {
    return new OptionSpec(name, word, example, description, Optional.of(text), use);
  }

  public OptionSpec required() {
    return new OptionSpec(name, word, example, description, defaultText, Use.REQUIRED);
  }

  /** The same, where another part of the command line may stand for it. */
  public OptionSpec optional() {
    return use == Use.REQUIRED
        ? new OptionSpec(name, word, example, description, defaultText, Use.OPTIONAL)
        : this;
  }

  public OptionSpec repeatable() {
    return new OptionSpec(name, word, example, description, defaultText, Use.REPEATABLE);
  }

  public boolean takesValue() {
    return !word.isEmpty();
  }

  /** Whether any words of the baker's own will do. */
  public boolean isFreeText() {
    return word.equals("TEXT") || word.equals("NAME");
  }

  /** The option as typed, with two dashes. */
  public String typed() {
    return "--" + name;
  }

  /** The option with its example value, ready to copy. */
  public String typedExample() {
    return takesValue() ? typed() + " " + ShellWord.of(example) : typed();
  }

  /** The description with the example and what applies without the option. */
  public String explained() {
    String example = takesValue() ? " Example: " + ShellWord.of(this.example) + "." : "";
    return description + example + defaultText.map(text -> " Default: " + text + ".").orElse("");
  }

  /**
   * The first sentence of the description; of a long one what stands before its first colon or
   * semicolon.
   */
  public String firstSentence() {
    int end = description.indexOf(". ");
    String first = end > 0 ? description.substring(0, end) : description;
    for (int i = 0; first.length() > LONG_SENTENCE && i < first.length(); i++) {
      if (first.startsWith(": ", i) || first.startsWith("; ", i)) {
        first = first.substring(0, i);
      }
    }
    return first.endsWith(".") ? first.substring(0, first.length() - 1) : first;
  }
}
