package doughtide.core.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import doughtide.core.day.BakeDay;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.InputException;
import java.lang.reflect.Constructor;
import java.lang.reflect.Executable;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Nothing where something is needed is refused where it is given, by an {@link InputException} that
 * names it or by a {@link NullPointerException}, and not found out later.
 */
class NullsTest {

  /** What the library makes and hands out, or parts of another engineer's answer. */
  private static final List<String> ANSWERS =
      List.of(
          "day.Adjustment",
          "day.BakeRoute",
          "day.BakeStep",
          "day.DayStep",
          "day.StepMargin",
          "day.question.",
          "document.Roster",
          "dough.Ingredients$",
          "feeding.FeedChoice",
          "dough.OverallFormula$",
          "dough.WeighedDough$",
          "flourtrial.TrialNote",
          "learning.Learned.",
          "learning.Learned$",
          "learning.LearnedParameter",
          "learning.Outlier",
          "loaf.SampleJar",
          "loaf.ShapeForecast$",
          "loaf.ShapeForecaster$",
          "quantity.InputException$",
          "quantity.Measure",
          "thermal.WaterAnswer",
          "thermal.WaterTerm");

  private static final Map<Class<?>, List<Object>> SAMPLES = FoundValues.in(ValueSamples.made(0));

  private final Set<String> taken = new TreeSet<>();

  @Test
  void aRecordRefusesNothingForEachOfItsParts() throws ReflectiveOperationException {
    for (Map.Entry<Class<?>, List<Object>> found : SAMPLES.entrySet()) {
      if (found.getKey().isRecord() && Modifier.isPublic(found.getKey().getModifiers())) {
        checkRecord(found.getValue().get(0));
      }
    }
    assertThat(taken).isEmpty();
  }

  private void checkRecord(Object sample) throws ReflectiveOperationException {
    RecordComponent[] parts = sample.getClass().getRecordComponents();
    Class<?>[] types = Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
    Object[] values = new Object[parts.length];
    for (int i = 0; i < parts.length; i++) {
      values[i] = parts[i].getAccessor().invoke(sample);
    }
    Constructor<?> constructor = sample.getClass().getDeclaredConstructor(types);
    check(constructor, values, Arrays.stream(parts).map(RecordComponent::getName).toList());
  }

  @Test
  void aFactoryRefusesNothingForEachOfItsParameters() {
    int checked = 0;
    for (Class<?> type : PublicTypes.ofCore()) {
      for (Method method : type.getDeclaredMethods()) {
        int modifiers = method.getModifiers();
        Optional<Object[]> values = valuesFor(method);
        if (Modifier.isPublic(modifiers)
            && Modifier.isStatic(modifiers)
            && !method.isSynthetic()
            && values.isPresent()
            && refused(method, values.get()).isEmpty()) {
          List<String> names =
              Arrays.stream(method.getParameters())
                  .map(each -> method.getName() + "(" + each.getName() + ")")
                  .toList();
          check(method, values.get(), names);
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(30);
    assertThat(taken).isEmpty();
  }

  @Test
  void aBuilderRefusesNothingWhereItIsGiven() {
    int checked = 0;
    for (Object builder : List.of(DoughFormula.builder(), BakeDay.builder())) {
      for (Method method : builder.getClass().getDeclaredMethods()) {
        if (Modifier.isPublic(method.getModifiers())
            && method.getParameterCount() == 1
            && !method.getParameterTypes()[0].isPrimitive()) {
          Throwable why = catchThrowable(() -> method.invoke(builder, (Object) null)).getCause();
          assertThat(unfit(why)).as(method.toString()).isEmpty();
          checked++;
        }
      }
    }
    assertThat(checked).isGreaterThan(15);
  }

  /** A sample of each type; nothing where there is none. */
  private static Optional<Object[]> valuesFor(Method method) {
    List<Object> values = new ArrayList<>();
    for (Class<?> type : method.getParameterTypes()) {
      Optional<Object> value = value(type);
      if (value.isEmpty()) {
        return Optional.empty();
      }
      values.add(value.get());
    }
    return Optional.of(values.toArray());
  }

  private static Optional<Object> value(Class<?> type) {
    if (type == double.class) {
      return Optional.of(20.0);
    }
    if (type == int.class) {
      return Optional.of(2);
    }
    return SAMPLES.entrySet().stream()
        .filter(each -> type.isAssignableFrom(each.getKey()) && type != Object.class)
        .findFirst()
        .map(each -> each.getValue().get(0));
  }

  private void check(Executable made, Object[] values, List<String> names) {
    for (int i = 0; i < values.length; i++) {
      if (!made.getParameterTypes()[i].isPrimitive()) {
        Object[] withNull = values.clone();
        withNull[i] = null;
        String type = made.getDeclaringClass().getName().replace("doughtide.core.", "");
        String name = type + "." + names.get(i);
        String why = refused(made, withNull).map(NullsTest::unfit).orElse("taken");
        if (!why.isEmpty() && ANSWERS.stream().noneMatch(name::startsWith)) {
          taken.add(name + " " + why);
        }
      }
    }
  }

  private static String unfit(Throwable refusal) {
    boolean named = refusal instanceof InputException e && e.key().endsWith(".missing");
    return named || refusal instanceof NullPointerException ? "" : refusal.toString();
  }

  private static Optional<Throwable> refused(Executable made, Object[] values) {
    try {
      if (made instanceof Method method) {
        method.invoke(null, values);
      } else {
        ((Constructor<?>) made).newInstance(values);
      }
      return Optional.empty();
    } catch (InvocationTargetException e) {
      return Optional.of(e.getCause());
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(
          Arrays.stream(values).map(String::valueOf).collect(Collectors.joining(", ")), e);
    }
  }
}
