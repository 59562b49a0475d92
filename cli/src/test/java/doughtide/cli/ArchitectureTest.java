package doughtide.cli;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.equivalentTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.type;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.name;
import static com.tngtech.archunit.core.domain.properties.HasOwner.Predicates.With.owner;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.methods;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import doughtide.core.Internal;
import doughtide.core.quantity.InputException;
import java.io.Serializable;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.TimeZone;
import java.util.stream.Stream;

/** Which package may use which. */
@AnalyzeClasses(packages = "doughtide", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  private static final String CORE = "doughtide.core.";
  private static final String REPORT = "doughtide.report.";
  private static final String CLI = "doughtide.cli.";

  @ArchTest
  static final ArchRule coreDependsOnCommonsMathOnly =
      classes()
          .that()
          .resideInAPackage("doughtide.core..")
          .should()
          .onlyDependOnClassesThat(
              resideInAnyPackage(
                      "doughtide.core..", "java..", "org.apache.commons.math3..", "org.jspecify..")
                  .as("core, java, commons-math3 or jspecify"))
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule coreReadsAndWritesNothing =
      noClasses()
          .that()
          .resideInAPackage("doughtide.core..")
          .should()
          .dependOnClassesThat(
              resideInAnyPackage("java.io..", "java.nio.file..", "java.net..")
                  .and(not(serializableMarker()))
                  .as("input and output"))
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule coreHasNoClock =
      noClasses()
          .that()
          .resideInAPackage("doughtide.core..")
          .should()
          .dependOnClassesThat()
          .haveFullyQualifiedName("java.time.Clock")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethodWhere(target(owner(resideInAPackage("java.time.."))).and(target(name("now"))))
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule coreKnowsNoDefaultLocaleOrZone =
      noClasses()
          .that()
          .resideInAPackage("doughtide.core..")
          .should()
          .callMethodWhere(target(owner(type(Locale.class))).and(target(name("getDefault"))))
          .orShould()
          .callMethodWhere(target(owner(type(TimeZone.class))).and(target(name("getDefault"))))
          .orShould()
          .callMethodWhere(target(owner(type(ZoneId.class))).and(target(name("systemDefault"))))
          .orShould()
          .callMethod(String.class, "toLowerCase")
          .orShould()
          .callMethod(String.class, "toUpperCase")
          .orShould()
          .callMethod(String.class, "format", String.class, Object[].class)
          .orShould()
          .callMethod(String.class, "formatted", Object[].class)
          .orShould()
          .dependOnClassesThat(resideInAPackage("java.text..").as("formats of a place"));

  @ArchTest
  static final ArchRule coreKeepsNoGlobalState =
      fields()
          .that()
          .areDeclaredInClassesThat()
          .resideInAPackage("doughtide.core..")
          .and()
          .areStatic()
          .and()
          .doNotHaveModifier(JavaModifier.SYNTHETIC)
          .should()
          .beFinal();

  /**
   * What a kind is called stands in the bundles; a key is how a document or an option writes it.
   */
  @ArchTest
  static final ArchRule kindsOfCoreHaveKeysAndNoWords =
      methods()
          .that()
          .areDeclaredInClassesThat()
          .resideInAPackage("doughtide.core..")
          .and()
          .areDeclaredInClassesThat()
          .areEnums()
          .and()
          .arePublic()
          .and()
          .areNotStatic()
          .and()
          .haveRawReturnType(String.class)
          .should()
          .haveName("key");

  /** A program tells refusals apart by their keys. */
  @ArchTest
  static final ArchRule refusalsOfCoreHaveKeys =
      noClasses()
          .that()
          .resideInAPackage("doughtide.core..")
          .should()
          .callConstructor(InputException.class, String.class);

  @ArchTest
  static final ArchRule coreWritesNoLog =
      noClasses()
          .that()
          .resideInAPackage("doughtide.core..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("java.util.logging..")
          .orShould()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  @ArchTest
  static final ArchRule reportDoesNotKnowTheCommandLine =
      noClasses()
          .that()
          .resideInAPackage("doughtide.report..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("doughtide.cli..")
          .allowEmptyShould(true);

  @ArchTest static final ArchRule quantityUses = coreRoom("quantity");

  @ArchTest static final ArchRule doughUses = coreRoom("dough", "quantity");

  @ArchTest static final ArchRule kineticsUses = coreRoom("kinetics", "quantity", "dough");

  @ArchTest static final ArchRule gasUses = coreRoom("gas", "quantity", "dough");

  @ArchTest static final ArchRule thermalUses = coreRoom("thermal", "quantity", "dough");

  @ArchTest
  static final ArchRule riseUses =
      coreRoom("rise", "quantity", "dough", "kinetics", "gas", "thermal");

  @ArchTest
  static final ArchRule forecastUses =
      coreRoom("forecast", "quantity", "dough", "kinetics", "gas", "thermal", "rise");

  @ArchTest
  static final ArchRule learningUses =
      coreRoom(
          "learning",
          "quantity",
          "dough",
          "kinetics",
          "gas",
          "thermal",
          "rise",
          "forecast",
          "loaf");

  @ArchTest
  static final ArchRule feedingUses =
      coreRoom("feeding", "quantity", "dough", "kinetics", "gas", "thermal", "rise", "forecast");

  @ArchTest
  static final ArchRule loafUses =
      coreRoom(
          "loaf",
          "quantity",
          "dough",
          "kinetics",
          "gas",
          "thermal",
          "rise",
          "forecast",
          "flourtrial");

  @ArchTest
  static final ArchRule dayUses =
      coreRoom(
          "day",
          "quantity",
          "dough",
          "kinetics",
          "gas",
          "thermal",
          "rise",
          "forecast",
          "loaf",
          "feeding",
          "flourtrial");

  @ArchTest static final ArchRule flourTrialUses = coreRoom("flourtrial", "quantity", "dough");

  @ArchTest
  static final ArchRule documentUses =
      coreRoom(
          "document",
          "quantity",
          "dough",
          "kinetics",
          "thermal",
          "rise",
          "forecast",
          "loaf",
          "learning",
          "feeding",
          "flourtrial");

  @ArchTest static final ArchRule wordsUse = room(REPORT, "words");

  @ArchTest static final ArchRule typeUses = room(REPORT, "type", "words");

  @ArchTest static final ArchRule chartUses = room(REPORT, "chart", "words", "type");

  @ArchTest static final ArchRule pageUses = room(REPORT, "page", "words", "type", "chart");

  @ArchTest
  static final ArchRule handoutUses = room(REPORT, "handout", "words", "type", "chart", "page");

  /** Its types reach nobody who uses the charts. */
  @ArchTest
  static final ArchRule chartLibraryStaysInOnePlace =
      noClasses()
          .that()
          .haveNameNotMatching(".*\\.CurvePainter(\\$.*)?")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("org.knowm..");

  @ArchTest
  static final ArchRule phoneUses = room(REPORT, "phone", "words", "type", "chart", "handout");

  @ArchTest static final ArchRule sessionUses = room(CLI, "session");

  @ArchTest static final ArchRule answerUses = room(CLI, "answer", "session", "text", "args");

  @ArchTest
  static final ArchRule handUses =
      room(CLI, "hand", "session", "text", "args", "answer", "file", "options");

  @ArchTest
  static final ArchRule batchUses =
      room(CLI, "batch", "session", "text", "args", "answer", "file", "options", "command");

  @ArchTest
  static final ArchRule commandUses =
      noClasses()
          .that()
          .resideInAnyPackage(
              "doughtide.cli.session..",
              "doughtide.cli.text..",
              "doughtide.cli.args..",
              "doughtide.cli.answer..",
              "doughtide.cli.file..",
              "doughtide.cli.options..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "doughtide.cli.command..", "doughtide.cli.batch..", "doughtide.cli.hand..");

  private static ArchRule coreRoom(String room, String... usable) {
    return room(CORE, room, usable);
  }

  /** A package may use itself, the packages named, and whatever is outside its module. */
  private static ArchRule room(String module, String room, String... usable) {
    String[] allowed =
        Stream.concat(Stream.of(room), Arrays.stream(usable))
            .map(name -> module + name + "..")
            .toArray(String[]::new);
    return classes()
        .that()
        .resideInAPackage(module + room + "..")
        .should()
        .onlyDependOnClassesThat(
            resideInAnyPackage(allowed)
                .or(equivalentTo(Internal.class))
                .or(not(resideInAPackage(module + ".")))
                .as("of " + String.join(", ", usable) + " or outside"))
        .allowEmptyShould(true);
  }

  /** Serializable is a marker that enums and exceptions carry; it reads nothing. */
  private static DescribedPredicate<JavaClass> serializableMarker() {
    return equivalentTo(Serializable.class);
  }
}
