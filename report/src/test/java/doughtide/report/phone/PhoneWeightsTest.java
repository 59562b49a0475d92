package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LiveDough;
import doughtide.core.learning.Reading;
import doughtide.core.learning.ReadingDoubt;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The page's own arithmetic against the library's, from the same members. */
class PhoneWeightsTest {

  private static final double TWO_MINUTES = 2.0 / 60;
  private static final double LEAST_WAIT_HOURS = 0.25;
  private static final Rise HALF = Rise.ofPercent(50);
  private static final ZonedDateTime MIXED =
      ZonedDateTime.parse("2027-03-06T14:00+01:00[Europe/Berlin]");

  /** A dough open on a page, its shape hours member by member, and the library's own. */
  @SuppressWarnings("ArrayRecordComponent") // only read
  private record Opened(LiveDough fresh, double[] shapeHours, PhoneBrowser phone) {
    static Opened usual() {
      LiveDough fresh =
          LiveDough.of(
              RiseForecaster.standard().keepingCurves(),
              JarError.standard(),
              DoughFormula.builder().build(),
              DoughTemperature.steady(Temperature.ofCelsius(25)));
      RiseForecast forecast = fresh.expected();
      Proof proof = Proof.inColdUntil(Temperature.ofCelsius(4), 17);
      PhoneDough.Loaf loaf =
          new PhoneDough.Loaf(proof, ShapeForecaster.of(forecast, proof).forecast());
      PhoneDough dough = PhoneDough.of("x", MIXED, forecast, HALF).with(loaf);
      String html = PhonePage.of(dough, Words.in(Language.ENGLISH)).html();
      return new Opened(
          fresh,
          loaf.shape().bulkEndOfMembers().stream().mapToDouble(each -> each).toArray(),
          new PhoneBrowser().open("x.html", html, MIXED.toInstant()));
    }
  }

  private static Opened usual;

  @BeforeAll
  static void openAPage() {
    usual = Opened.usual();
  }

  @AfterAll
  static void closeIt() {
    usual.phone().close();
  }

  /** A member of the forecast as the truth, its jar read with the errors that are believed. */
  private static List<Reading> history(RiseForecast forecast, long seed) {
    Random random = new Random(seed);
    int truth = random.nextInt(forecast.ensemble().size());
    double factor = JarError.standard().factorsOfMembers(512)[random.nextInt(512)];
    double end = Math.min(forecast.hoursOfMembers(Rise.ofPercent(80))[truth], 12);
    int count = 1 + random.nextInt(6);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      double hours = end * (0.25 + 0.8 * (i + random.nextDouble()) / count);
      double height = (1 + forecast.risesOfMembers(hours)[truth]) * factor;
      double deviation = ReadingNoise.standard().riseDeviation(new Rise(height - 1));
      double wrong = random.nextInt(15) == 0 ? 4 : 1;
      double read = Math.max(height + wrong * deviation * random.nextGaussian(), 0.6);
      readings.add(Reading.ofRise(hours, new Rise(read - 1)));
    }
    return readings;
  }

  /** What the page works out from readings. */
  @SuppressWarnings("ArrayRecordComponent") // only read
  private record OnPage(
      double[] half,
      double[] shape,
      double carrying,
      double fewest,
      double lookForHalf,
      double lookForShape,
      String doubt) {
    static OnPage of(PhoneBrowser phone, List<Reading> readings) {
      String given =
          readings.stream()
              .map(r -> "{hours:" + r.hours() + ",rise:" + r.rise().orElseThrow().fraction() + "}")
              .collect(Collectors.joining(",", "[", "]"));
      String[] found =
          phone
              .run(
                  "(() => { const all = "
                      + given
                      + "; const d = doughs[0]; const w = weigh(d.dough, all);"
                      + " const last = all[all.length - 1];"
                      + " const of = key => d.events.filter(e => e.key === key)[0];"
                      + " const at = key => [0.1, 0.5, 0.9].map(l =>"
                      + " quantile(whenIs(d.dough, w, of(key)), l)).join(' ');"
                      + " const some = all.slice(0, Math.ceil(all.length / 2));"
                      + " const look = key => lookFor(d.dough, weigh(d.dough, some), of(key),"
                      + " some[some.length - 1].hours);"
                      + " const carried = all.map((r, i) => carrying(weigh(d.dough,"
                      + " all.slice(0, i + 1))));"
                      + " return at('rise50.0') + ' ' + at('shape') + ' ' + carrying(w) + ' '"
                      + " + Math.min.apply(null, carried) + ' '"
                      + " + look('rise50.0') + ' ' + look('shape') + ' '"
                      + " + (doubt(d.dough, all.slice(0, -1), last) || '-'); })()")
              .split(" ");
      return new OnPage(
          numbers(found, 0),
          numbers(found, 3),
          parsed(found[6]),
          parsed(found[7]),
          parsed(found[8]),
          parsed(found[9]),
          found[10]);
    }

    private static double[] numbers(String[] found, int from) {
      return new double[] {parsed(found[from]), parsed(found[from + 1]), parsed(found[from + 2])};
    }

    private static double parsed(String number) {
      return Double.parseDouble(number);
    }
  }

  private static LiveDough read(LiveDough fresh, List<Reading> readings) {
    LiveDough dough = fresh;
    for (Reading reading : readings) {
      dough = dough.with(reading);
    }
    return dough;
  }

  private static void assertNear(double[] onPage, TimeWindow window) {
    assertNear(onPage[0], window.early());
    assertNear(onPage[1], window.likely());
    assertNear(onPage[2], window.late());
  }

  private static void assertNear(double onPage, OptionalDouble hours) {
    if (hours.isEmpty()) {
      assertThat(onPage).isInfinite();
    } else {
      assertThat(onPage).isCloseTo(hours.getAsDouble(), within(TWO_MINUTES));
    }
  }

  private static Rise riseToShapeAt(LiveDough dough, double[] shapeHours) {
    double shape = dough.over(shapeHours).window().likely().orElseThrow();
    return Rise.ofPercent(dough.forecast().likelyPercentAt(shape));
  }

  private static OptionalDouble lookForShape(LiveDough dough, double[] shapeHours) {
    return dough.nextLookHours(riseToShapeAt(dough, shapeHours));
  }

  private static TimeWindow jarsAtShape(LiveDough dough, double[] shapeHours) {
    return dough.forecast().hoursToRise(riseToShapeAt(dough, shapeHours));
  }

  /**
   * Where the dough may be there at the first hour that counts, one may say so and one just not.
   */
  private static void assertSameLook(double onPage, OptionalDouble look, double first) {
    double here = Double.isNaN(onPage) ? first : onPage;
    assertThat(here).isCloseTo(look.orElse(first), within(TWO_MINUTES));
  }

  /** Whether the page still answers; where it does not, it says so. */
  private static boolean agree(Opened page, long seed) {
    List<Reading> readings = history(page.fresh().expected(), seed);
    OnPage found = OnPage.of(page.phone(), readings);
    if (found.fewest() < LiveDough.FEWEST_MEMBERS) {
      return false;
    }
    LiveDough dough = read(page.fresh(), readings);
    assertThat(dough.isRefitted()).as("history %d, %s", seed, readings).isFalse();
    assertThat(found.carrying()).isCloseTo(dough.membersThatCarry(), withinPercentage(1));
    assertNear(found.half(), dough.forecast().hoursToRise(HALF));
    assertNear(found.shape(), jarsAtShape(dough, page.shapeHours()));
    List<Reading> some = readings.subList(0, (readings.size() + 1) / 2);
    double first = some.get(some.size() - 1).hours() + LEAST_WAIT_HOURS;
    LiveDough then = read(page.fresh(), some);
    assertSameLook(found.lookForHalf(), then.nextLookHours(HALF), first);
    assertSameLook(found.lookForShape(), lookForShape(then, page.shapeHours()), first);
    assertThat(found.doubt()).isEqualTo(dough.doubt().map(ReadingDoubt::name).orElse("-"));
    return true;
  }

  @Test
  void withoutReadingsTheNextLookIsThatOfTheLibrary() {
    LiveDough dough = usual.fresh();
    String look =
        "lookFor(doughs[0].dough, weigh(doughs[0].dough, []), doughs[0].events.filter(e => e.key"
            + " === '%s')[0], 0)";
    double toShape = Double.parseDouble(usual.phone().run(look.formatted("shape")));
    assertSameLook(toShape, lookForShape(dough, usual.shapeHours()), LEAST_WAIT_HOURS);
    double toHalf = Double.parseDouble(usual.phone().run(look.formatted("rise50.0")));
    assertSameLook(toHalf, dough.nextLookHours(HALF), LEAST_WAIT_HOURS);
  }

  @Test
  void withoutReadingsTheMembersGiveWhatTheForecastSays() {
    String[] found =
        usual
            .phone()
            .run(
                "doughs[0].events.map(e => { const of = whenIs(doughs[0].dough, e.members.map(() =>"
                    + " 1), e); return [0.1, 0.5, 0.9].map((l, i) =>"
                    + " Math.abs(quantile(of, l) - e.first[i])).filter(d => d > 0.01).join(','); })"
                    + ".join(' ') + ' .'")
            .split(" ");
    assertThat(String.join("", found)).isEqualTo(".");
  }

  @Test
  void agreesWithTheLibraryOnSomeHistories() {
    int answered = 0;
    for (long seed = 1; seed <= 8; seed++) {
      answered += agree(usual, seed) ? 1 : 0;
    }
    assertThat(answered).isGreaterThan(4);
  }

  @Test
  @Tag("long")
  void agreesWithTheLibraryOnTwoHundredHistories() {
    int answered = 0;
    for (long seed = 1000; seed < 1200; seed++) {
      answered += agree(usual, seed) ? 1 : 0;
    }
    System.out.println("of 200 histories " + answered + " leave members enough on the page");
    assertThat(answered).isGreaterThan(100);
  }

  @Test
  void saysWhenFewMembersAreLeft() {
    List<Reading> odd = new ArrayList<>();
    for (int i = 1; i <= 6; i++) {
      odd.add(Reading.ofRise(i, Rise.ofPercent(20 * i)));
    }
    assertThat(read(usual.fresh(), odd).isRefitted()).isTrue();
    assertThat(OnPage.of(usual.phone(), odd).carrying()).isLessThan(LiveDough.FEWEST_MEMBERS);
  }
}
