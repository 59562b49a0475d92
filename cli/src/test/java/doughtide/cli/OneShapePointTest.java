package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The same dough has the same shape point whichever command is asked. Dough and room are equally
 * warm, so that nothing drifts; each command keeps its own number of members.
 */
class OneShapePointTest {
  private static final double RISE_POINTS = 2;
  private static final double HOURS = 10.0 / 60;
  private static final String MIXED = "2027-03-06T09:00";
  private static final String COLD = " --cold 4C";
  private static final String DAY =
      " --ready-at 2027-03-07T10:30 --at-the-bench 07:00-22:00 --zone UTC --room 24C";

  @TempDir Path folder;

  /** Hours from mixing to the end of bulk fermentation, and the rise in per cent that shows it. */
  private record Point(double hours, double percent) {
    void isLike(Point other) {
      assertThat(percent).as("rise").isCloseTo(other.percent(), within(RISE_POINTS));
      assertThat(hours).as("hours").isCloseTo(other.hours(), within(HOURS));
    }
  }

  private JsonAnswer ask(String line) {
    String all = line + " --format json";
    return JsonAnswer.of(CliRun.in(TestEnvironment.in(folder).usual(), all.split(" ")));
  }

  private static String dough(String celsius) {
    return " --starter 20% --hydration 72% --zone UTC --dough-temp " + celsius;
  }

  private Point rise(String celsius, String cold, String mixed, String oven) {
    JsonAnswer answer =
        ask("rise" + dough(celsius) + cold + " --mixed-at " + mixed + " --bake-at " + oven);
    return new Point(answer.number("shape.hoursLikely"), answer.number("shape.risePercent"));
  }

  private static String local(String utc) {
    return utc.replace("Z", "");
  }

  private static double hours(String from, String to) {
    return Duration.between(LocalDateTime.parse(from), LocalDateTime.parse(to)).toMinutes() / 60.0;
  }

  @ParameterizedTest
  @CsvSource({
    "20C, --cold 4C",
    "28C, --cold 4C",
    "24C, --cold 5C --cold-measured --cold-air fan --shaping firm"
  })
  void riseLeaveAndWantedAgree(String celsius, String night) {
    String cold = " " + night;
    Point rise = rise(celsius, cold, MIXED, "2027-03-07T07:00");
    String leaving = " --now 09:05 --leave-at 20:30 --back-at 21:30 --bake-at 07:00" + cold;
    JsonAnswer leave = ask("leave" + dough(celsius) + " --mixed-at " + MIXED + leaving);
    int option = optionOfKind(leave, "shape-at-point");
    double shaped = hours(MIXED, local(leave.text("options." + option + ".shapedAt")));
    long minutes = Math.round((22 - 0.5 - rise.hours()) * 60);
    JsonAnswer wanted =
        ask(
            "wanted"
                + dough(celsius)
                + " --shape-at 2027-03-06T17:00"
                + cold
                + " --hold "
                + minutes
                + "min");

    new Point(shaped - 0.5, leave.number("options." + option + ".riseWhenShapedPercent"))
        .isLike(rise);
    new Point(wanted.number("answers.0.hoursLikely"), wanted.number("shapeRisePercent"))
        .isLike(rise);
  }

  private static int optionOfKind(JsonAnswer leave, String kind) {
    for (int i = 0; i < leave.number("options.size"); i++) {
      if (leave.text("options." + i + ".kind").equals(kind)) {
        return i;
      }
    }
    throw new AssertionError("no option " + kind);
  }

  /** Though it follows eight times as many loaves. */
  @ParameterizedTest
  @CsvSource({"25C, --cold 4C", "21C, --cold 4C", "27C, --cold 6C"})
  void aDoughInHandAgreesWithRise(String celsius, String night) {
    String cold = " " + night;
    ask("start saturday" + dough(celsius) + cold + " --mixed-at 08:00 --bake-at 07:00");
    JsonAnswer started = ask("now saturday");
    Point hand =
        new Point(started.number("shape.hoursLikely"), started.number("shape.risePercent"));

    hand.isLike(rise(celsius, cold, "2027-03-06T08:00", "2027-03-07T07:00"));
  }

  @Test
  void everyPlanOfADayShapesWhereRiseWould() {
    JsonAnswer day =
        ask(
            "bake-day --dough-temp 24C --proofer --starter 20% --hydration 72% --plans 6"
                + DAY
                + COLD);
    int compared = 0;
    for (int i = 0; i < day.number("plans.size"); i++) {
      String plan = "plans." + i;
      String dough = plan + ".doughs.0";
      boolean plain = day.text(dough + ".bulkPartlyCold").equals("false");
      if (plain && day.text(dough + ".proof").equals("cold")) {
        Steps steps = new Steps(day, plan + ".steps.", COLD);
        steps.point(day.number(dough + ".shapeRisePercent")).isLike(steps.byRise());
        compared++;
      }
    }
    assertThat(compared).isPositive();
  }

  /**
   * A cold that was measured and loaves that are shaped firmly, as the same options say; the dough
   * stands in the room and warms itself a little. Nobody is there to bake in the evening, so the
   * loaves spend the night in the cold.
   */
  @Test
  void aClassShapesWhereRiseWould() throws IOException {
    Files.writeString(
        folder.resolve("class.csv"),
        "name,loaves,hydration,starter,dough_temp,shaping\nPlain,1,72%,20%,24C,firm\n");
    String cold = " --cold 5C --cold-measured";
    JsonAnswer day = ask("class-day class.csv" + DAY.replace("22:00", "20:00") + cold);
    Steps steps =
        new Steps(day, "plans.0.steps.", cold + " --shaping firm --room 24C --dough-mass 850g");

    assertThat(day.text("plans.0.doughs.0.proof")).isEqualTo("cold");
    steps.point(day.number("plans.0.doughs.0.shapeRisePercent")).isLike(steps.byRise());
  }

  /** The steps of a plan. */
  private final class Steps {
    private final JsonAnswer day;
    private final String path;
    private final String cold;

    Steps(JsonAnswer day, String path, String cold) {
      this.cold = cold;
      this.day = day;
      this.path = path;
    }

    private String at(String step) {
      for (int i = 0; i < day.number(path + "size"); i++) {
        if (day.text(path + i + ".step").startsWith(step)) {
          return local(day.text(path + i + ".from"));
        }
      }
      throw new AssertionError("no step " + step);
    }

    Point point(double percent) {
      return new Point(hours(at("mix the dough"), at("divide")), percent);
    }

    Point byRise() {
      return rise("24C", cold, at("mix the dough"), at("bake"));
    }
  }
}
