package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/** Values as typed, by key, wherever they were typed: in options or in a document. */
@Internal
public interface TypedValues {

  /** The value of a key, if there is one. */
  Optional<String> text(String key);

  /** What a message calls the key, for example {@code --hydration} or {@code hydration:}. */
  String label(String key);

  /**
   * Values from two functions.
   *
   * @param texts the value of a key, if there is one
   * @param labels what a message calls a key
   */
  static TypedValues of(Function<String, Optional<String>> texts, UnaryOperator<String> labels) {
    Checks.given("texts", texts);
    Checks.given("labels", labels);
    return new TypedValues() {
      @Override
      public Optional<String> text(String key) {
        return texts.apply(key);
      }

      @Override
      public String label(String key) {
        return labels.apply(key);
      }
    };
  }
}
