package doughtide.core.document;

import java.util.Optional;

/** Values as typed, by key, wherever they were typed: in options or in a document. */
public interface TypedValues {

  /** The value of a key, if there is one. */
  Optional<String> text(String key);

  /** What a message calls the key, for example {@code --hydration} or {@code hydration:}. */
  String label(String key);
}
