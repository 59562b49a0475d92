package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.PieceCurve;
import doughtide.core.rise.RiseCurve;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Are the core times right? Invented refrigerators of which only the dial is known, with the spread
 * that the surveys give, and doughs whose temperature was misread; then the same refrigerators
 * after a probe was read twice in one loaf. Written for whoever reads the log.
 */
@Tag("long")
class ColdCalibrationTest {
  private static final int DOUGHS = 20;
  private static final int LOAVES_OF_A_DOUGH = 100;
  private static final int PROBED_OF_A_DOUGH = 10;
  private static final int MEMBERS = 128;
  private static final double SHAPED_HOURS = 4.5;
  private static final double FOLLOWED_HOURS = 30;
  private static final double PROBE_CELSIUS = 0.5;
  private static final Temperature TEN = Temperature.ofCelsius(10);

  private record Night(LoafModel loaf, Proof proof, List<RiseCurve> bulks) {
    Distribution coreTimes(LoafModel known) {
      return Distribution.of(
          IntStream.range(0, MEMBERS)
              .mapToDouble(i -> coreTime(known, bulks.get(i), LoafScores.of(i)))
              .toArray());
    }

    static double coreTime(LoafModel loaf, RiseCurve bulk, LoafScores scores) {
      PieceCurve piece = loaf.run(bulk, SHAPED_HOURS, scores, FOLLOWED_HOURS);
      return piece.hoursUntilCoreIsAt(TEN).orElse(Double.POSITIVE_INFINITY) - SHAPED_HOURS;
    }
  }

  private static Night night(Random random) {
    double celsius = 20 + 8 * random.nextDouble();
    Proof proof =
        Proof.inCold(Temperature.ofCelsius(2 + random.nextInt(4)), 20)
            .withPiece(
                Mass.ofGrams(400 + random.nextInt(900)),
                random.nextBoolean() ? PieceForm.ROUND : PieceForm.TIN);
    DoughFormula formula = DoughFormula.builder().build();
    RiseForecast bulk =
        RiseForecaster.standard()
            .withMembers(MEMBERS + LOAVES_OF_A_DOUGH)
            .forecast(formula, DoughTemperature.steady(Temperature.ofCelsius(celsius)), 6);
    return new Night(LoafModel.of(formula, proof, LoafSettings.FULL), proof, bulk.curves());
  }

  @Test
  void coreTimesOfRefrigeratorsByTheDialAreInsideEightInTen() {
    Random random = new Random(20260714);
    int inside = 0;
    int probedInside = 0;
    List<Double> widths = new ArrayList<>();
    for (int d = 0; d < DOUGHS; d++) {
      Night night = night(random);
      TimeWindow window = night.coreTimes(night.loaf()).window();
      for (int i = 0; i < LOAVES_OF_A_DOUGH; i++) {
        RiseCurve bulk = night.bulks().get(MEMBERS + i);
        LoafScores truth =
            new LoafScores(random.nextGaussian(), random.nextGaussian(), random.nextDouble());
        double time = Night.coreTime(night.loaf(), bulk, truth);
        inside += isInside(time, window) ? 1 : 0;
        if (i < PROBED_OF_A_DOUGH) {
          TimeWindow after = night.coreTimes(probed(night, bulk, truth, random)).window();
          RiseCurve next = night.bulks().get(MEMBERS + LOAVES_OF_A_DOUGH - 1 - i);
          probedInside += isInside(Night.coreTime(night.loaf(), next, truth), after) ? 1 : 0;
          widths.add(width(after) / width(window));
        }
      }
    }
    double share = inside / (double) (DOUGHS * LOAVES_OF_A_DOUGH);
    double probedShare = probedInside / (double) (DOUGHS * PROBED_OF_A_DOUGH);
    double ratio = widths.stream().sorted().skip(widths.size() / 2).findFirst().orElseThrow();
    System.out.printf(
        Locale.ROOT,
        "| by the dial | %.3f inside | after one probed loaf | %.3f inside | %.2f as wide |%n",
        share,
        probedShare,
        ratio);

    assertThat(share).isBetween(0.77, 0.83);
    assertThat(ratio).isLessThanOrEqualTo(0.5);
  }

  private static LoafModel probed(Night night, RiseCurve bulk, LoafScores truth, Random random) {
    PieceCurve piece = night.loaf().run(bulk, SHAPED_HOURS, truth, FOLLOWED_HOURS);
    List<ColdFit.Reading> readings = new ArrayList<>();
    for (double hours : new double[] {3, 7}) {
      double core = piece.coreCelsiusAt(SHAPED_HOURS + hours);
      readings.add(new ColdFit.Reading(hours, core + PROBE_CELSIUS * random.nextGaussian()));
    }
    RiseCurve believed = night.bulks().get(random.nextInt(MEMBERS));
    Cold known =
        ColdFit.of(
            night.loaf(),
            night.proof().coldPlace().orElseThrow(),
            believed,
            SHAPED_HOURS,
            0,
            readings);
    return LoafModel.of(
        DoughFormula.builder().build(), night.proof().withCold(known), LoafSettings.FULL);
  }

  private static boolean isInside(double time, TimeWindow window) {
    return time >= window.early().orElse(Double.POSITIVE_INFINITY)
        && time <= window.late().orElse(Double.POSITIVE_INFINITY);
  }

  private static double width(TimeWindow window) {
    return window.late().orElse(FOLLOWED_HOURS) - window.early().orElse(FOLLOWED_HOURS);
  }
}
