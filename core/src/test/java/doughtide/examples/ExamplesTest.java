package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.sun.net.httpserver.HttpServer;
import doughtide.core.day.BakeDay;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.SearchControl;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.document.ReadingsDocument.Setting;
import doughtide.core.document.StarterDocument;
import doughtide.core.dough.Composition;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.ClockWindow;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.learning.Bake;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.Learner;
import doughtide.core.learning.LiveDough;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseParameters;
import doughtide.core.thermal.LoggedReadings;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

/** What an application that embeds the library writes: the lines of the guide in the Javadoc. */
class ExamplesTest {

  @Test
  void anApplicationInOneFileAnswersOverHttp() throws Exception {
    HttpServer server = WebPage.start(0);
    try {
      assertThat(get(server, "/half?celsius=25").body()).matches("\\d\\.\\d to .* h, likely .*\n");
      assertThat(get(server, "/half?celsius=250").statusCode()).isEqualTo(400);
      assertThat(get(server, "/half?celsius=warm").body()).startsWith("give a number");
    } finally {
      server.stop(0);
    }
  }

  private static HttpResponse<String> get(HttpServer server, String path) throws Exception {
    String host = InetAddress.getLoopbackAddress().getHostAddress();
    URI uri = URI.create("http://" + host + ":" + server.getAddress().getPort() + path);
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void aRateCurveOfOnesOwn() {
    LinearCurve curve = new LinearCurve(); // implements RateCurve
    RiseParameters model =
        RiseParameters.standard().with(new RiseParameters.RateCurves("straight", curve, curve));
    RiseForecaster mine = RiseForecaster.standard().with(model);

    assertThat(half(mine, 28)).isLessThan(half(mine, 20));
  }

  @Test
  void aForecast() {
    DoughFormula formula =
        DoughFormula.builder()
            .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(20)))
            .hydration(Share.ofPercent(72))
            .build();
    DoughTemperature warm = DoughTemperature.steady(Temperature.ofCelsius(25));
    RiseForecast forecast = RiseForecaster.standard().forecast(formula, warm);
    TimeWindow half = forecast.hoursToRise(Rise.ofPercent(50));
    ZonedDateTime mixedAt = ZonedDateTime.parse("2027-03-06T09:30+01:00[Europe/Berlin]");
    ClockWindow onTheClock = half.after(mixedAt);

    assertThat(onTheClock.likely().orElseThrow()).isAfter(onTheClock.early().orElseThrow());
    assertThat(Hours.between(mixedAt, onTheClock.late().orElseThrow()))
        .isCloseTo(half.late().orElseThrow(), within(0.001));
  }

  @Test
  void aNightInTheCold() {
    RiseForecast forecast = forecast();
    Proof night = Proof.inColdUntil(Temperature.ofCelsius(4), 22); // in the oven at hour 22
    ShapeForecast shape = ShapeForecaster.of(forecast, night).forecast();
    TimeWindow shapeAt = shape.hours();
    double sampleJar = shape.rise().likely().orElseThrow(); // per cent, at that hour

    assertThat(shapeAt.early().orElseThrow()).isLessThan(shapeAt.late().orElseThrow());
    assertThat(sampleJar).isBetween(5.0, 80.0);
  }

  @Test
  void aFlourOfOnesOwn() {
    Flour flour =
        new Flour(
            "mill's own",
            Composition.ofParts(0.125, 0.015, 0.04, 0.008, 0.14), // protein, fat, fibre, ash, water
            0.55, // share of gas in the dough above which it begins to leak
            1, // how much of it forms gluten: wheat 1, rye 0
            Rise.ofPercent(60), // at which its loaf is usually baked
            List.of("wheat")); // cereals, for allergen lines
    DoughFormula dough = DoughFormula.builder().flour(flour).hydration(Share.ofPercent(75)).build();
    RiseForecast forecast =
        RiseForecaster.standard()
            .forecast(dough, DoughTemperature.steady(Temperature.ofCelsius(25)));

    assertThat(forecast.hoursToRise(Rise.ofPercent(30)).likely()).isPresent();
  }

  @Test
  void aLoggerFeedsItsReadings() {
    LoggedReadings logged = new LoggedReadings(); // as many as there are: it grows no further
    for (int i = 0; i < 8; i++) {
      logged.add(i * 0.5, 26 - i * 0.4); // hours since mixing, °C
    }
    DoughTemperature measured = DoughTemperature.following(logged.trace());
    RiseForecast forecast =
        RiseForecaster.standard().forecast(DoughFormula.builder().build(), measured);

    double steady = forecast().hoursToRise(Rise.ofPercent(50)).likely().orElseThrow();
    assertThat(forecast.hoursToRise(Rise.ofPercent(50)).likely().orElseThrow())
        .isNotCloseTo(steady, within(0.05));
  }

  @Test
  void theDoughInHand() {
    LiveDough dough =
        LiveDough.of(
            RiseForecaster.standard(),
            JarError.standard(),
            DoughFormula.builder().build(),
            DoughTemperature.steady(Temperature.ofCelsius(25)));
    LiveDough later =
        dough
            .with(Reading.ofRise(2.5, Rise.ofPercent(20)))
            .with(Reading.ofRise(3.5, Rise.ofPercent(45)));
    TimeWindow half = later.forecast().hoursToRise(Rise.ofPercent(50));
    OptionalDouble lookAgain = later.nextLookHours(Rise.ofPercent(100));
    TimeWindow shape = later.shapedFor(Proof.inCold(Temperature.ofCelsius(4), 12)).shape().hours();

    double before = dough.forecast().hoursToRise(Rise.ofPercent(50)).widthHours().orElseThrow();
    assertThat(half.widthHours().orElseThrow()).isLessThan(before);
    assertThat(lookAgain.orElseThrow()).isGreaterThan(3.5);
    assertThat(shape.likely().orElseThrow()).isLessThan(half.likely().orElseThrow());
  }

  @Test
  void aStarterLearnedAndKept() {
    String text =
        "starter: 20%\ndough temp: 25C\nmixed at: 09:30\ntime,rise %\n12:30,30\n14:00,70\n";
    Bake bake = ReadingsDocument.read(text.lines().iterator(), Setting.of("Saturday")).bake();
    LearnedStarter starter = Learner.standard().learn(List.of(bake)).starter("1.0");
    String kept = StarterDocument.text(starter); // keep it where you keep things

    LearnedStarter again = StarterDocument.read(kept.lines().iterator(), List.of()).starter();
    RiseForecaster mine = RiseForecaster.standard().with(again.posterior());

    assertThat(mine.belief()).isNotEqualTo(RiseForecaster.standard().belief());
    assertThat(again.readings()).isEqualTo(2);
  }

  @Test
  void aPlanThatCanBeStopped() {
    BakeDay day =
        BakeDay.builder()
            .readyAt(36) // noon of the next day, counted from a midnight
            .bench(new BenchHours(List.of(new BenchInterval(6.5, 22), new BenchInterval(30, 37))))
            .cold(Temperature.ofCelsius(4))
            .build();
    AtomicBoolean cancelled = new AtomicBoolean();
    SearchControl control = SearchControl.none().stoppingWhen(cancelled::get);
    cancelled.set(true); // somebody presses a button
    DayAnswer answer = DayPlanner.plan(List.of(day), 1, control);

    assertThat(answer.complete()).isFalse();
  }

  private static double half(RiseForecaster forecaster, double celsius) {
    return forecaster
        .forecast(
            DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(celsius)))
        .hoursToRise(Rise.ofPercent(50))
        .likely()
        .orElseThrow();
  }

  private static RiseForecast forecast() {
    return RiseForecaster.standard()
        .forecast(
            DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
  }
}
