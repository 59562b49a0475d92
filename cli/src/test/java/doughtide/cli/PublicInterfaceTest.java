package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.domain.properties.CanBeAnnotated;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import doughtide.cli.batch.BatchRows;
import doughtide.core.Internal;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What other programs are promised: the public types of {@code core} and {@code report} without the
 * mark {@link Internal}, and {@link BatchRows} of the command line.
 */
class PublicInterfaceTest {

  private static final List<JavaClass> ALL =
      new ClassFileImporter()
              .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
              .importPackages("doughtide")
              .stream()
              .toList();

  @Test
  void whatIsPromisedSpeaksOfNothingElse() {
    Set<String> leaks = new TreeSet<>();
    for (JavaClass type : ALL) {
      if (promised(type)) {
        leaks.addAll(leaks(type));
      }
    }
    assertThat(leaks).isEmpty();
  }

  @Test
  void itIsSmall() {
    assertThat(promisedIn("doughtide.core.")).isBetween(80L, 125L);
    assertThat(promisedIn("doughtide.report.")).isBetween(10L, 25L);
  }

  private static long promisedIn(String start) {
    return ALL.stream().filter(each -> each.getName().startsWith(start) && promised(each)).count();
  }

  private static boolean promised(JavaClass type) {
    return reachable(type)
        && !marked(type)
        && !type.isAnnotation()
        && (!type.getPackageName().startsWith("doughtide.cli")
            || type.isEquivalentTo(BatchRows.class));
  }

  private static boolean reachable(JavaClass type) {
    return type.getModifiers().contains(JavaModifier.PUBLIC)
        && type.getEnclosingClass().map(PublicInterfaceTest::reachable).orElse(true);
  }

  private static boolean marked(CanBeAnnotated each) {
    return each.isAnnotatedWith(Internal.class);
  }

  private static Set<String> leaks(JavaClass type) {
    Stream<String> above =
        Stream.concat(type.getRawInterfaces().stream(), type.getRawSuperclass().stream())
            .filter(PublicInterfaceTest::notPromised)
            .map(each -> type.getName() + " is a " + each.getName());
    Stream<String> units =
        type.getCodeUnits().stream()
            .filter(each -> open(each.getModifiers()) && !marked(each))
            .flatMap(each -> leaks(each, types(each)));
    Stream<String> fields =
        type.getFields().stream()
            .filter(each -> open(each.getModifiers()) && !marked(each))
            .flatMap(each -> leaks(each, each.getType()));
    return Stream.of(above, units, fields).flatMap(each -> each).collect(Collectors.toSet());
  }

  private static boolean open(Set<JavaModifier> modifiers) {
    return !modifiers.contains(JavaModifier.SYNTHETIC)
        && !modifiers.contains(JavaModifier.BRIDGE)
        && (modifiers.contains(JavaModifier.PUBLIC) || modifiers.contains(JavaModifier.PROTECTED));
  }

  private static Stream<JavaType> types(JavaCodeUnit unit) {
    return Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream());
  }

  private static Stream<String> leaks(JavaCodeUnit unit, Stream<JavaType> types) {
    Set<JavaClass> parts = unit.isConstructor() ? markedParts(unit.getOwner()) : Set.of();
    return types
        .flatMap(each -> each.getAllInvolvedRawTypes().stream())
        .filter(each -> notPromised(each) && !parts.contains(each))
        .map(each -> unit.getFullName() + " speaks of " + each.getName());
  }

  /** A mark on a part of a record holds for what its constructor takes, too. */
  private static Set<JavaClass> markedParts(JavaClass type) {
    return type.getMethods().stream()
        .filter(each -> marked(each) && each.getParameterTypes().isEmpty())
        .flatMap(each -> each.getReturnType().getAllInvolvedRawTypes().stream())
        .collect(Collectors.toSet());
  }

  private static Stream<String> leaks(JavaField field, JavaType type) {
    return type.getAllInvolvedRawTypes().stream()
        .filter(PublicInterfaceTest::notPromised)
        .map(each -> field.getFullName() + " speaks of " + each.getName());
  }

  private static boolean notPromised(JavaClass type) {
    return type.getName().startsWith("doughtide.") && !promised(type);
  }
}
