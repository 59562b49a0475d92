package doughtide.core.quantity;

import doughtide.core.Internal;
import java.io.Serializable;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What is serialized in place of a record that has an {@link Optional} or an {@link
 * OptionalDouble}, which are not serializable: nothing stands for an empty one. Such a record has
 *
 * <pre>{@code
 * private Object writeReplace() {
 *   return SentRecord.of(this);
 * }
 * }</pre>
 */
@Internal
public final class SentRecord implements Serializable {
  private static final long serialVersionUID = 1;

  private final Class<?> type;
  private final @Nullable Object[] parts;

  private SentRecord(Class<?> type, @Nullable Object[] parts) {
    this.type = type;
    this.parts = parts;
  }

  /**
   * What to send.
   *
   * @param record of this library
   */
  public static SentRecord of(Record record) {
    RecordComponent[] components = record.getClass().getRecordComponents();
    @Nullable Object[] parts = new @Nullable Object[components.length];
    Arrays.setAll(parts, i -> part(components[i], record));
    return new SentRecord(record.getClass(), parts);
  }

  private static @Nullable Object part(RecordComponent component, Record record) {
    try {
      component.getAccessor().setAccessible(true);
      return bare(component.getAccessor().invoke(record));
    } catch (ReflectiveOperationException e) {
      throw new InnerFault(record.getClass().getName() + " cannot be sent: " + e.getMessage());
    }
  }

  private static @Nullable Object bare(Object part) {
    if (part instanceof Optional<?> optional) {
      return optional.isPresent() ? optional.get() : null;
    }
    if (part instanceof OptionalDouble optional) {
      return optional.isPresent() ? (Object) optional.getAsDouble() : null;
    }
    return part;
  }

  private Object readResolve() {
    try {
      Class<?>[] types =
          Arrays.stream(type.getRecordComponents())
              .map(RecordComponent::getType)
              .toArray(Class<?>[]::new);
      Object[] arguments = new Object[parts.length];
      Arrays.setAll(arguments, i -> wrapped(types[i], parts[i]));
      Constructor<?> constructor = type.getDeclaredConstructor(types);
      constructor.setAccessible(true);
      return constructor.newInstance(arguments);
    } catch (ReflectiveOperationException | RuntimeException e) {
      throw new InputException(
          "sent-record", "what was sent is no " + type.getSimpleName() + ": send it again");
    }
  }

  private static @Nullable Object wrapped(Class<?> type, @Nullable Object part) {
    if (type == Optional.class) {
      return Optional.ofNullable(part);
    }
    if (type == OptionalDouble.class) {
      return part == null ? OptionalDouble.empty() : OptionalDouble.of((Double) part);
    }
    return part;
  }
}
