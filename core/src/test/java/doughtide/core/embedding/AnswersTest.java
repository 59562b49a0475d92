package doughtide.core.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.day.BakeDay;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.DayAnswer;
import doughtide.core.day.DayPlanner;
import doughtide.core.day.SearchControl;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.kinetics.RateCurve;
import doughtide.core.learning.Learned;
import doughtide.core.learning.Learner;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InnerFault;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseParameters.RateCurves;
import doughtide.core.thermal.LoggedReadings;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a program that embeds the library sees of answers in its log, and of questions in vain. */
class AnswersTest {
  private static final RiseForecaster FEW = RiseForecaster.standard().withMembers(16);

  private static RiseForecast at(double celsius) {
    return FEW.forecast(
        DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(celsius)));
  }

  @Test
  void aShapePointSaysItselfInALine() {
    ShapeForecast shape =
        ShapeForecaster.of(at(25), Proof.inCold(Temperature.ofCelsius(4), 12)).forecast();

    assertThat(shape.toString())
        .matches("shape after [0-9.]+ / [0-9.]+ / [0-9.]+ h when the jar shows .* %");
    assertThat(shape.likely().orElseThrow().toString())
        .matches("bulk to hour [0-9.]+, oven at hour [0-9.]+ risen .* / .* / .* %");
    assertThat(ShapeForecaster.of(at(0), Proof.inCold(Temperature.ofCelsius(4), 12)).forecast())
        .hasToString("no hour to shape at");
  }

  @Test
  void aPlanSaysItselfInALine() {
    BakeDay day =
        BakeDay.builder()
            .readyAt(30)
            .bench(new BenchHours(List.of(new BenchInterval(6, 30))))
            .doughCelsius(List.of(24.0))
            .starterPercents(List.of(20.0))
            .plans(1)
            .forecaster(FEW)
            .build();
    DayAnswer answer = DayPlanner.plan(List.of(day), 1, SearchControl.none());

    assertThat(answer.days().get(0).plans().get(0).toString())
        .matches(
            "mixed at hour [0-9.]+ at 24 °C with 20 % starter, shaped at [0-9.]+, in the oven at"
                + " [0-9.]+; right \\d+ %");
  }

  @Test
  void whatWasLearnedAndLoggedSaysItselfInALine() {
    Learned nothing = Learner.standard().learn(List.of());
    LoggedReadings logged = new LoggedReadings();

    assertThat(logged).hasToString("no readings");
    logged.add(0.5, 24.5);
    logged.add(1, 26);
    assertThat(logged).hasToString("2 readings, 24.5…26 °C, to hour 1");
    assertThat(nothing.toString()).startsWith("bakes 0, readings 0, outliers []: VIGOUR 0 ± ");
    assertThat(nothing.starter("1.0").toString())
        .startsWith("version 1.0, bakes 0, readings 0, mixers {}: VIGOUR 0 ± ")
        .hasSizeLessThan(200);
  }

  @Test
  void theVersionOfAStarterIsOneLineOfItsFile() {
    Learned nothing = Learner.standard().learn(List.of());

    assertThatThrownBy(() -> nothing.starter("1.0\nbakes: 99"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("in one line");
    assertThatThrownBy(() -> nothing.starter(" ")).isInstanceOf(InputException.class);
  }

  @Test
  void aQuestionThatNoAnswerCoversIsTheProgramsFault() {
    RiseForecast possible = at(25);
    double[] oneIsNegative = new double[16];
    oneIsNegative[3] = -1;

    assertThatThrownBy(() -> at(0).bandAt(1))
        .isInstanceOf(InnerFault.class)
        .hasMessage("no hours can be given for this dough: ask isPossible() first");
    assertThatThrownBy(() -> at(0).likelyPercentAt(1)).isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> possible.bandAt(possible.hours() + 1))
        .isInstanceOf(InnerFault.class)
        .hasMessageContaining("is outside 0…");
    assertThatThrownBy(() -> possible.band(1)).hasMessage("points of a band 1 is outside 2…100000");
    assertThatThrownBy(() -> possible.weighted(oneIsNegative))
        .hasMessageStartingWith("weight of a member -1 is outside 0…");
    assertThatThrownBy(() -> possible.weighted(new double[16])).isInstanceOf(InnerFault.class);
    assertThatThrownBy(() -> TimeWindow.NEVER.plus(Double.NaN)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> FEW.withMembers(0))
        .isInstanceOf(InputException.class)
        .hasMessage("ensemble size 0 members is outside 8…65536 members");
  }

  private record Scaled(double factor, double lowestCelsius, double highestCelsius)
      implements RateCurve {
    @Override
    public double rate(double celsius) {
      return factor * Math.max(0, celsius / REFERENCE_CELSIUS);
    }
  }

  @Test
  void aRateCurveThatIsNoneSaysWhatToDo() {
    RateCurve good = new Scaled(1, 10, 35);

    assertThatThrownBy(() -> new RateCurves("own", new Scaled(2, 10, 35), good))
        .isInstanceOf(InputException.class)
        .hasMessage(
            "rate curve of the yeast is 2 at 25 °C and must be 1 there: divide all its rates by"
                + " its rate at 25 °C");
    assertThatThrownBy(() -> new RateCurves("own", good, new Scaled(1, 35, 10)))
        .hasMessage(
            "rate curve of the bacteria has data from 35 to 10 °C: give the lower temperature"
                + " first");
    assertThatThrownBy(() -> new RateCurves("own", new Scaled(-1, 10, 35), good))
        .hasMessageContaining("is outside 0…1000 times the rate at 25 °C")
        .extracting(refusal -> ((InputException) refusal).key())
        .isEqualTo("model.curves");
  }
}
