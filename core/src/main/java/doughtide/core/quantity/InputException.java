package doughtide.core.quantity;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * A value given from outside that cannot be used. The message is one line for people: what was
 * given, what is allowed, what to do. For programs it carries a key, and where a number lies
 * outside its limits the quantity, the number and the limits. What goes wrong inside is an {@link
 * InnerFault} instead.
 */
public class InputException extends IllegalArgumentException {
  private static final long serialVersionUID = 2L;

  /** The key of a refusal that is known by its sentence only. */
  public static final String UNNAMED = "input";

  private final String key;
  private final @Nullable Outside outside;

  /**
   * Smallest and greatest value allowed, both ends included.
   *
   * @param low smallest value allowed
   * @param high greatest value allowed
   * @param unit unit of both and of the value; empty for a bare number
   */
  public record Limits(double low, double high, String unit) implements java.io.Serializable {}

  /** A number outside its limits. */
  private record Outside(String quantity, double value, Limits limits)
      implements java.io.Serializable {}

  /**
   * A refusal with the key {@link #UNNAMED}.
   *
   * @param message one line, without the name of a class or a stack
   */
  public InputException(String message) {
    this(UNNAMED, message);
  }

  /**
   * A refusal that a program can tell from others.
   *
   * @param key lower-case words, digits, hyphens and dots; stays the same when the sentence changes
   * @param message one line, without the name of a class or a stack
   */
  public InputException(String key, String message) {
    this(key, message, null);
  }

  /**
   * The refusal of another one, in other words.
   *
   * @param cause whose key, quantity, value and limits this one has, too
   * @param message one line, without the name of a class or a stack
   */
  protected InputException(InputException cause, String message) {
    this(cause.key, message, cause.outside);
  }

  private InputException(String key, String message, @Nullable Outside outside) {
    super(message);
    this.key = key;
    this.outside = outside;
  }

  static InputException outside(
      String key, String message, String quantity, double value, Limits limits) {
    return new InputException(key, message, new Outside(quantity, value, limits));
  }

  /**
   * {@return a word that is none of those allowed} Its key is the quantity's with {@code .unknown}.
   *
   * @param quantity what the word should name, for example {@code "flour"}
   * @param word as it was given
   * @param allowed the words that are known
   */
  public static InputException unknown(String quantity, String word, Collection<String> allowed) {
    return new InputException(
        keyOf(quantity) + ".unknown",
        quantity
            + " '"
            + word.strip()
            + "' is not known: use one of "
            + String.join(", ", allowed));
  }

  /**
   * {@return the same refusal in other words, for example with the line of a file before it}
   *
   * @param message one line, without the name of a class or a stack
   */
  public InputException inWords(String message) {
    return new InputException(this, message);
  }

  /**
   * {@return what was refused, stable over releases: lower-case words, digits, hyphens and dots}
   */
  public String key() {
    return key;
  }

  /** {@return the quantity in the trade's words, where a number lies outside its limits} */
  public Optional<String> quantity() {
    return Optional.ofNullable(outside).map(Outside::quantity);
  }

  /** {@return the number given, where it lies outside its limits; may be no finite number} */
  public OptionalDouble value() {
    return outside == null ? OptionalDouble.empty() : OptionalDouble.of(outside.value());
  }

  /** {@return what is allowed, where a number lies outside} */
  public Optional<Limits> limits() {
    return Optional.ofNullable(outside).map(Outside::limits);
  }

  /**
   * The key of a quantity: its words joined by hyphens, without names in quotation marks.
   *
   * @param quantity in the trade's words
   */
  static String keyOf(String quantity) {
    return quantity
        .replaceAll("'[^']*'", "")
        .toLowerCase(Locale.ROOT)
        .replaceAll("[^a-z0-9]+", "-")
        .replaceAll("^-|-$", "");
  }
}
