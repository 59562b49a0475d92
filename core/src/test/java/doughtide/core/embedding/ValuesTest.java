package doughtide.core.embedding;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every public type of the library that is a value: equal to another made of the same, unequal to
 * one made of something else, said in one true line, and the same after a journey. The values are
 * found in {@link ValueSamples}, made there three times: twice alike and once otherwise.
 */
class ValuesTest {
  private static final Pattern IDENTITY = Pattern.compile("@[0-9a-f]{4,}|Lambda");

  private static final Samples SAMPLES = new Samples();

  /** All values that could be found, by their type, in the order in which they were found. */
  private static final class Samples {
    final Map<Class<?>, List<Object>> some = FoundValues.in(ValueSamples.made(0));
    final Map<Class<?>, List<Object>> again = FoundValues.in(ValueSamples.made(0));
    final Map<Class<?>, List<Object>> others = FoundValues.in(ValueSamples.made(1));
  }

  static Stream<Class<?>> values() {
    return SAMPLES.some.keySet().stream().sorted((a, b) -> a.getName().compareTo(b.getName()));
  }

  /** A form that has no measure is one value alone. */
  static Stream<Class<?>> valuesOfParts() {
    return values().filter(type -> !type.isRecord() || type.getRecordComponents().length > 0);
  }

  @Test
  void everyPublicTypeIsAValueOrIsKnownNotToBeOne() {
    Set<String> missing =
        PublicTypes.ofCore().stream()
            .filter(type -> !SAMPLES.some.containsKey(type))
            .map(Class::getName)
            .collect(Collectors.toCollection(TreeSet::new));

    assertThat(missing).containsExactlyInAnyOrderElementsOf(PublicTypes.NO_VALUES.keySet());
  }

  @ParameterizedTest
  @MethodSource("values")
  void equalOnesAreEqual(Class<?> type) {
    List<Object> some = SAMPLES.some.get(type);
    List<Object> again = SAMPLES.again.get(type);
    Map<Object, Integer> cache = new HashMap<>();
    for (int i = 0; i < some.size(); i++) {
      cache.put(some.get(i), i);
    }

    assertThat(again).isEqualTo(some).hasSameHashCodeAs(some);
    assertThat(again).allSatisfy(each -> assertThat(cache).containsKey(each));
    assertThat(some.get(0)).isNotEqualTo(null).isNotEqualTo("other");
  }

  @ParameterizedTest
  @MethodSource("valuesOfParts")
  void otherOnesAreNotEqual(Class<?> type) {
    List<Object> all = new ArrayList<>(SAMPLES.some.get(type));
    all.addAll(SAMPLES.others.getOrDefault(type, List.of()));

    assertThat(Set.copyOf(all)).as("different " + type.getSimpleName()).hasSizeGreaterThan(1);
  }

  @ParameterizedTest
  @MethodSource("values")
  void eachSaysItselfInALine(Class<?> type) {
    List<Object> some = SAMPLES.some.get(type);
    List<String> said = some.stream().map(Object::toString).toList();

    assertThat(said)
        .allSatisfy(text -> assertThat(text).isNotBlank().doesNotContain("\n"))
        .allSatisfy(text -> assertThat(IDENTITY.matcher(text).find()).as(text).isFalse())
        .isEqualTo(SAMPLES.again.get(type).stream().map(Object::toString).toList());
  }

  @ParameterizedTest
  @MethodSource("values")
  void eachIsEqualAfterAJourney(Class<?> type) throws Exception {
    assertThat(Serializable.class).isAssignableFrom(type);
    for (Object each : SAMPLES.some.get(type)) {
      assertThat(there(each)).isEqualTo(each).hasToString(each.toString());
    }
  }

  private static Object there(Object value) throws IOException, ClassNotFoundException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
      out.writeObject(value);
    }
    try (ObjectInputStream in =
        new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray()))) {
      return in.readObject();
    }
  }
}
