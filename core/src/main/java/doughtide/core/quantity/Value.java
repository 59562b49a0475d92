package doughtide.core.quantity;

import java.io.Serializable;
import java.util.Arrays;
import java.util.List;

/**
 * A value that is no record, because how it is kept is nobody's business: equal to another one of
 * its class whose parts are equal, so it can be the key of a cache; serializable. Subclasses are
 * immutable and say themselves in one line.
 */
public abstract class Value implements Serializable {
  private static final long serialVersionUID = 1;

  /** For subclasses. */
  protected Value() {}

  /** {@return all that tells one value from another of the same class, each part itself a value} */
  protected abstract List<?> parts();

  /** In a line, for logs. */
  @Override
  public abstract String toString();

  @Override
  public final boolean equals(Object other) {
    return this == other
        || (other != null
            && other.getClass() == getClass()
            && parts().equals(((Value) other).parts()));
  }

  @Override
  public final int hashCode() {
    return parts().hashCode();
  }

  /**
   * {@return an array as a part}
   *
   * @param numbers copied
   */
  protected static List<Double> list(double[] numbers) {
    return Arrays.stream(numbers).boxed().toList();
  }
}
