package doughtide.core.embedding;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Looks through objects and what they hold for values of the library. */
final class FoundValues {
  private static final int MOST_OF_A_TYPE = 20;

  private final Map<Class<?>, List<Object>> found = new LinkedHashMap<>();
  private final Set<Object> seen = Collections.newSetFromMap(new IdentityHashMap<>());

  private FoundValues() {}

  /** All values in some objects, by type, in the same order for objects made alike. */
  static Map<Class<?>, List<Object>> in(List<?> roots) {
    FoundValues values = new FoundValues();
    values.look(roots);
    return values.found;
  }

  private void look(Object object) {
    if (object instanceof Optional<?> optional) {
      optional.ifPresent(this::look);
    } else if (object instanceof Iterable<?> some) {
      some.forEach(this::look);
    } else if (object instanceof Map<?, ?> map) {
      look(List.copyOf(map.values()));
    } else if (object instanceof Object[] array) {
      look(List.of(array));
    } else if (object != null && object.getClass().getName().startsWith("doughtide.core.")) {
      lookAtOurs(object);
    }
  }

  private void lookAtOurs(Object object) {
    Class<?> type = object.getClass();
    if (type.isEnum() || object instanceof Enum<?> || type.isHidden() || !seen.add(object)) {
      return;
    }
    if (!PublicTypes.NO_VALUES.containsKey(type.getName()) && PublicTypes.isSeenOutside(type)) {
      List<Object> ofType = found.computeIfAbsent(type, key -> new ArrayList<>());
      if (ofType.size() < MOST_OF_A_TYPE) {
        ofType.add(object);
      }
    }
    for (Field field : type.getDeclaredFields()) {
      if (!Modifier.isStatic(field.getModifiers()) && !field.getType().isPrimitive()) {
        look(read(field, object));
      }
    }
  }

  private static Object read(Field field, Object object) {
    try {
      field.setAccessible(true);
      return field.get(object);
    } catch (IllegalAccessException e) {
      throw new IllegalStateException(e);
    }
  }
}
