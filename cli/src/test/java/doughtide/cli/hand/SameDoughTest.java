package doughtide.cli.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.CliRun;
import doughtide.cli.JsonAnswer;
import doughtide.cli.TestEnvironment;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LiveDough;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One dough with the same readings, asked of the library, the commands and the telephone page. */
class SameDoughTest {
  private static final double ROUNDED = 1e-4; // hours as they are written
  private static final double MIXED = 9.5;

  @TempDir Path folder;

  private CliRun at(String clock, String words) {
    Instant now = Instant.parse("2027-03-06T" + clock + ":00Z");
    return CliRun.in(new TestEnvironment(folder, () -> now, false).usual(), words.split(" "));
  }

  private static LiveDough fresh() {
    return LiveDough.of(
            RiseForecaster.standard(),
            JarError.standard(),
            DoughFormula.builder()
                .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(20)))
                .build(),
            DoughTemperature.steady(Temperature.ofCelsius(25)))
        .shapedFor(Proof.inColdUntil(Temperature.ofCelsius(4), 31 - MIXED));
  }

  @Test
  void theSameHoursAndTheSameNextLook() throws IOException {
    at("09:30", "start saturday --dough-temp 25C --starter 20% --cold 4C --bake-at 07:00");
    at("11:00", "note 8%");
    JsonAnswer noted = JsonAnswer.of(at("11:30", "note 13% --format json"));
    JsonAnswer now = JsonAnswer.of(at("11:31", "now --page dough.html --format json"));

    LiveDough dough =
        fresh()
            .with(Reading.ofRise(11 - MIXED, Rise.ofPercent(8)))
            .with(Reading.ofRise(11.5 - MIXED, Rise.ofPercent(13)));
    ShapeForecaster.Point shape = dough.shape();
    double likely = shape.hours().likely().orElseThrow();
    Rise shows = Rise.ofPercent(shape.rise().likely().orElseThrow());
    double look = dough.nextLookHours(shows).orElseThrow();

    for (JsonAnswer answer : new JsonAnswer[] {noted, now}) {
      same(answer, "shape.hoursEarly", shape.hours().early().orElseThrow());
      same(answer, "shape.hoursLikely", likely);
      same(answer, "shape.hoursLate", shape.hours().late().orElseThrow());
      same(answer, "nextLookHours", look);
      same(answer, "aheadHours", fresh().shape().hours().likely().orElseThrow() - likely);
    }
    assertThat(now.number("shape.risePercent")).isCloseTo(shows.percent(), within(0.01));
    assertThat(now.number("rises.2.hoursLikely"))
        .isCloseTo(
            dough.forecast().hoursToRise(Rise.ofPercent(50)).likely().orElseThrow(),
            within(ROUNDED));
    String page = Files.readString(folder.resolve("dough.html"));
    assertThat(ofPage(page, "data-event=\"shape\"[^>]* data-likely"))
        .isCloseTo(likely, within(1e-9));
    assertThat(ofPage(page, "data-look")).isCloseTo(look, within(1e-9));
  }

  private static void same(JsonAnswer answer, String key, double hours) {
    assertThat(answer.number(key)).as(key).isCloseTo(hours, within(ROUNDED));
  }

  private static double ofPage(String page, String attribute) {
    Matcher found = Pattern.compile(attribute + "=\"([0-9.]+)\"").matcher(page);
    assertThat(found.find()).as(attribute).isTrue();
    return Double.parseDouble(found.group(1));
  }
}
