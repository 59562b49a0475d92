package doughtide.core.embedding;

import doughtide.core.kinetics.RateCurve;
import doughtide.core.quantity.InputException;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.TemperatureTrace;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The public types of the library of which there can be objects. */
final class PublicTypes {
  private static final String MODEL = "works things out from values";
  private static final String ANSWER = "an answer that holds a forecast or a curve";
  private static final String BUILDER = "changes while it is used";

  /** What is no value, and why: equal to itself only, not promised to be serializable. */
  static final Map<String, String> NO_VALUES = new HashMap<>();

  static {
    none(
        "holds a function",
        "day.SearchControl",
        "document.Catalogue",
        "document.ReadingsDocument$Setting");
    none("stands for a record while that travels", "quantity.SentRecord");
    none(
        BUILDER,
        "day.BakeDay$Builder",
        "document.CsvCells",
        "document.LoggerDocument",
        "document.ReadingsDocument",
        "document.StarterDocument",
        "dough.DoughFormula$Builder",
        "thermal.LoggedReadings");
    none("holds exceptions", "document.ReadingsDocument$Refused");
    none(
        "a part of a document while it is read or written",
        "document.DoughNotes$Line",
        "document.ReadingsDocument$Core",
        "document.ReadingsDocument$Head");
    none(
        "a question, asked once",
        "day.again.RestPlanner$Dough",
        "day.again.Slipped",
        "day.again.StagesBegun");
    none("a part of a day while it is planned", "day.Taken");
    none(
        ANSWER,
        "day.BakePlan",
        "day.BakePlan$Begun",
        "day.BakePlan$Weighed",
        "day.DayAnswer",
        "day.DayAnswer$Choice",
        "day.DayAnswer$Obstacle",
        "day.DayAnswer$Remedy",
        "day.DayPlan",
        "day.bench.BenchBatches",
        "day.question.InverseAnswer",
        "day.question.InverseQuestions$MixingTime",
        "feeding.FeedingForecast",
        "feeding.RatioAnswer",
        "feeding.RefreshmentPlan",
        "feeding.RefreshmentPlan$Step",
        "feeding.StagedForecast",
        "feeding.StagedForecast$Step",
        "forecast.RiseForecast",
        "loaf.ShapeForecast",
        "loaf.ShapeForecast$Night");
    none(
        MODEL,
        "dough.DoughProperties",
        "feeding.FeedingPlanner",
        "flourtrial.AbsorptionFit",
        "forecast.Ensemble",
        "day.DayPlanner",
        "day.again.RestPlanner",
        "day.question.InverseQuestions",
        "learning.Learner",
        "learning.LiveDough",
        "loaf.ShapeTable",
        "learning.TodayUpdate",
        "loaf.LoafModel",
        "loaf.ShapeForecaster",
        "rise.PieceBody",
        "rise.PieceCurve",
        "rise.RiseCurve",
        "rise.RiseModel",
        "thermal.Conduction",
        "thermal.CoolingSteps");
  }

  private static void none(String why, String... types) {
    for (String type : types) {
      NO_VALUES.put("doughtide.core." + type, why);
    }
  }

  private PublicTypes() {}

  /** All of them but enums, exceptions and what has no state. */
  static List<Class<?>> ofCore() {
    try {
      Path classes =
          Path.of(InputException.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      try (Stream<Path> files = Files.walk(classes.resolve("doughtide/core"))) {
        return files
            .map(file -> classes.relativize(file).toString().replace('/', '.').replace('\\', '.'))
            .filter(name -> name.endsWith(".class") && !name.endsWith("package-info.class"))
            .<Class<?>>map(name -> loaded(name.substring(0, name.length() - ".class".length())))
            .filter(PublicTypes::isSeenOutside)
            .filter(PublicTypes::hasState)
            .toList();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Class<?> loaded(String name) {
    try {
      return Class.forName(name);
    } catch (ClassNotFoundException e) {
      throw new IllegalStateException(e);
    }
  }

  /** Whether it is public all the way, or hidden behind a public interface of values. */
  static boolean isSeenOutside(Class<?> type) {
    boolean implementation =
        Stream.of(TemperatureTrace.class, RateCurve.class, PieceShape.class)
            .anyMatch(each -> each.isAssignableFrom(type));
    return implementation || isPublic(type);
  }

  private static boolean isPublic(Class<?> type) {
    return Modifier.isPublic(type.getModifiers())
        && (type.getEnclosingClass() == null || isPublic(type.getEnclosingClass()));
  }

  private static boolean hasState(Class<?> type) {
    return !type.isEnum()
        && !type.isInterface()
        && !Throwable.class.isAssignableFrom(type)
        && !Modifier.isAbstract(type.getModifiers())
        && !type.isAnonymousClass()
        && (type.isRecord()
            || Arrays.stream(type.getDeclaredFields())
                .anyMatch(field -> !Modifier.isStatic(field.getModifiers())));
  }
}
