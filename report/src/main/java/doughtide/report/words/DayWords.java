package doughtide.report.words;

import doughtide.core.Internal;
import doughtide.core.day.Adjustment;
import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.ProofKind;
import doughtide.core.day.StepMargin;
import doughtide.core.day.question.LeaveOption;
import doughtide.core.loaf.StrengthPlan;
import doughtide.core.thermal.Mixing;
import doughtide.core.thermal.WaterAnswer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;

/** What a day's plan says, in the words of a language. Immutable. */
@Internal
public final class DayWords {
  private final Words words;

  /**
   * @param words the language
   */
  public DayWords(Words words) {
    this.words = words;
  }

  /** What is done, with its number where there are several such steps. */
  public String step(BakeStep step) {
    if (step.number() == 0) {
      return step(step.kind());
    }
    return switch (step.kind()) {
      case BAKE -> batch("dayStep.bakeBatch", step);
      case COOL -> batch("dayStep.coolBatch", step);
      default -> step(step.kind()) + " " + step.number();
    };
  }

  private String batch(String key, BakeStep step) {
    return words.say(key, Map.of("number", words.number(step.number(), 0)));
  }

  /** What is done. */
  public String step(BakeStep.Kind kind) {
    return say("dayStep", kind);
  }

  /** What a step needs beside its name; empty where that is all. */
  public String detail(DayPlan day, DayStep each) {
    BakePlan plan = day.plans().get(each.doughs().get(0));
    return switch (each.step().kind()) {
      case FEED ->
          stage(plan, each.step())
              + new FeedWords(words)
                  .line(plan.feedRatio(each.step()), Optional.of(day.feedAmounts(each)));
      case AUTOLYSE -> water(plan.water(Mixing.BY_HAND));
      case MIX ->
          words.say(
                  "formula.temperature",
                  Map.of("temperature", words.temperature(plan.doughTemperature().celsius())))
              + (plan.hasAutolyse() ? "" : " " + water(plan.water(Mixing.BY_HAND)));
      case SHAPE ->
          words.say(
              "sheet.rise",
              Map.of("rise", words.percent(Math.rint(plan.shapeRise().percent()), 0)));
      case FOLD -> fold(plan, each.step());
      case LOAVES_INTO_COLD -> words.hours(plan.ovenHour() - each.step().fromHour());
      default -> "";
    };
  }

  /** How a dough is folded this time; empty where the step says so or its plan has fewer folds. */
  public String fold(BakePlan plan, BakeStep step) {
    List<StrengthPlan.Fold> folds = plan.strength().steps();
    int number = Math.max(1, step.number());
    if (number > folds.size()) {
      return "";
    }
    String kind = new StrengthWords(words).kind(folds.get(number - 1));
    return kind.equalsIgnoreCase(step(step.kind())) ? "" : kind;
  }

  /** Name and temperature of a stage of the starter, before what is fed; else empty. */
  public String stage(BakePlan plan, BakeStep feeding) {
    return plan.stage(feeding)
        .map(
            stage ->
                stage.name().map(name -> name + ", ").orElse("")
                    + words.temperature(stage.temperature().celsius())
                    + "; ")
        .orElse("");
  }

  private String water(WaterAnswer answer) {
    double celsius = Math.rint(answer.waterCelsius());
    return celsius < 0
        ? words.say("dayDetail.ice")
        : words.say("dayDetail.water", Map.of("temperature", words.temperature(celsius)));
  }

  /** Where loaves wait for the oven. */
  public String proof(ProofKind kind) {
    return say("dayProof", kind);
  }

  /** What ends a margin. */
  public String limit(StepMargin.Limit limit) {
    return say("dayLimit", limit);
  }

  /** A way out when the baker must leave. */
  public String leave(LeaveOption.Kind kind) {
    return say("leave", kind);
  }

  /** What would give the tightest step of a day more room. */
  public String loosening(Adjustment change) {
    return switch (change.kind()) {
      case MIX ->
          words.say(
              change.value() < 0 ? "loosen.mixEarlier" : "loosen.mixLater",
              Map.of("hours", words.hours(Math.abs(change.value()))));
      case STARTER_SHARE, DOUGH_TEMPERATURE ->
          words.say("loosen." + key(change.kind()), of(change));
      default -> say("loosen", change.kind());
    };
  }

  /** Why the first plan of a day comes first, a sentence. */
  public String choice(DayAnswer.Choice choice) {
    DoubleFunction<String> inWords =
        switch (choice.criterion()) {
          case RIGHT -> share -> words.number(Math.floor(share * 10 + 1e-9), 0);
          case JAR -> share -> words.number(Math.rint(share * 100), 0);
          case NIGHT, ORDINARY -> number -> words.number(number, 0);
          case POINT, MARGIN, FRESH, LENGTH, ALONE -> hours -> words.hours(Math.max(0, hours));
        };
    return words.say(
        "choice." + key(choice.criterion()),
        Map.of("own", inWords.apply(choice.value()), "other", inWords.apply(choice.other())));
  }

  /** Why a day has no plan. */
  public String reason(DayAnswer.Reason reason) {
    return say("obstacle", reason);
  }

  /**
   * What makes a day possible, or that nothing was found.
   *
   * @param answer a day without plan, of one dough or several
   * @param clock the clock time of an hour on the axis
   */
  public String remedy(DayAnswer answer, boolean oneDough, DoubleFunction<String> clock) {
    DayAnswer.Obstacle obstacle = answer.obstacle().orElseThrow();
    if (obstacle.remedy().isPresent()) {
      List<Adjustment> changes = obstacle.remedy().get().adjustments();
      String all =
          changes.stream()
              .map(change -> change(change, clock))
              .collect(Collectors.joining(" " + words.say("remedy.and") + " "));
      return words.say("remedy.with", Map.of("changes", all));
    }
    if (!answer.complete()) {
      return words.say("remedy.notInTime");
    }
    return words.say(oneDough ? "remedy.none" : "remedy.noneOfMany");
  }

  private String change(Adjustment change, DoubleFunction<String> clock) {
    String clockTime = clock.apply(change.atHour());
    return switch (change.kind()) {
      case READY ->
          words.say(
              change.value() > 0 ? "change.readyLater" : "change.readyEarlier",
              Map.of("hours", words.hours(Math.abs(change.value())), "clock", clockTime));
      case BENCH_EARLIER, BENCH_LONGER, EVERY_TIME_LONGER, EVENING_BEFORE ->
          words.say(
              "change." + key(change.kind()),
              Map.of("hours", words.hours(change.value()), "clock", clockTime));
      default -> words.say("change." + key(change.kind()), of(change));
    };
  }

  private Map<String, String> of(Adjustment change) {
    double value = change.value();
    return Map.of(
        "percent",
        words.percent(value, value == Math.rint(value) ? 0 : 1),
        "temperature",
        words.number(value, value == Math.rint(value) ? 0 : 1) + " °C",
        "number",
        words.number(value, 0));
  }

  private String say(String group, Enum<?> constant) {
    return words.say(group + "." + key(constant));
  }

  /** {@code BULK_INTO_COLD} as {@code bulkIntoCold}. */
  private static String key(Enum<?> constant) {
    StringBuilder key = new StringBuilder();
    for (String part : constant.name().toLowerCase(Locale.ROOT).split("_", -1)) {
      key.append(
          key.isEmpty() ? part : part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1));
    }
    return key.toString();
  }
}
