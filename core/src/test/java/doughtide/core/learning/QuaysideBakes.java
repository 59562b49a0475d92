package doughtide.core.learning;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseCurve;
import doughtide.core.rise.RiseModel;
import doughtide.core.thermal.TemperatureTrace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.commons.math3.random.Well19937c;

/**
 * Writes the invented readings of the Quayside bread class: from the model, with a starter 25 %
 * livelier than typical, and errors of reading. Run its main method with the folder {@code
 * testdata} as argument.
 */
final class QuaysideBakes {
  private static final double[] CLASS_STARTER = {0.22, 0.05, 0.2, -0.04, 0.005, 0, 0, 0.01};
  private static final double START_MM = 55;

  private final Well19937c random = new Well19937c(20_260_307);

  /** How a file is typed. */
  private enum Typed {
    PERCENT,
    MILLIMETRES,
    DECIMAL_COMMA
  }

  private record Plan(
      String file,
      String date,
      int mixedMinute,
      double starter,
      double hydration,
      double celsius,
      double cooling,
      Typed typed,
      double notedOff) {}

  private static final List<Plan> PAST =
      List.of(
          new Plan("2026-01-10", "2026-01-10", 570, 20, 70, 24.5, 0.25, Typed.PERCENT, 0),
          new Plan("2026-01-17", "2026-01-17", 555, 20, 72, 25.0, 0.30, Typed.MILLIMETRES, 0),
          new Plan("2026-01-24", "2026-01-24", 600, 15, 72, 26.0, 0.20, Typed.DECIMAL_COMMA, 0),
          new Plan("2026-01-31", "2026-01-31", 540, 20, 68, 23.5, 0.15, Typed.PERCENT, 0),
          new Plan("2026-02-07", "2026-02-07", 585, 25, 74, 24.0, 0.25, Typed.PERCENT, -5),
          new Plan("2026-02-14", "2026-02-14", 570, 20, 70, 25.5, 0.30, Typed.MILLIMETRES, 0));
  private static final Plan TODAY =
      new Plan("quayside-today", "2026-02-21", 570, 20, 72, 25.0, 0.25, Typed.PERCENT, 0);

  private QuaysideBakes() {}

  /**
   * @param args the folder for the files
   */
  public static void main(String[] args) throws IOException {
    Path testdata = Path.of(args[0]);
    QuaysideBakes bakes = new QuaysideBakes();
    Path folder = Files.createDirectories(testdata.resolve("quayside-bakes"));
    for (Plan plan : PAST) {
      Files.writeString(folder.resolve(plan.file() + ".csv"), bakes.text(plan, 1.15));
    }
    Files.writeString(testdata.resolve(TODAY.file() + ".csv"), bakes.text(TODAY, 0.55));
  }

  private String text(Plan plan, double part) {
    StringBuilder text = new StringBuilder();
    text.append("dough: Quayside bread class, invented readings\n");
    text.append("flour: white:80%, wholemeal wheat:20%\n");
    text.append("starter: ").append((int) plan.starter()).append("%\n");
    text.append("hydration: ").append((int) plan.hydration()).append("%\n");
    text.append("salt: 2%\n");
    text.append(line("dough temp: %.1fC\n", plan.celsius() + plan.notedOff()));
    text.append("mixed at: ").append(plan.date()).append('T').append(clock(plan.mixedMinute()));
    text.append("\nstart height: ").append((int) START_MM).append(" mm\n\n");
    text.append(
        switch (plan.typed()) {
          case PERCENT -> "time,rise %,dough temp C,note\n";
          case MILLIMETRES -> "time,height mm,dough temp C,note\n";
          case DECIMAL_COMMA -> "time;rise %;dough temp C;note\n";
        });
    addReadings(text, plan, part);
    return text.toString();
  }

  private void addReadings(StringBuilder text, Plan plan, double part) {
    double[] x = CLASS_STARTER.clone();
    double[] spread = LearningPrior.standard().bakeDeviation();
    for (int i = 0; i < x.length; i++) {
      x[i] += spread[i] * random.nextGaussian();
    }
    double[] hours = {0, 4, 12};
    double[] celsius = {
      plan.celsius(), plan.celsius() - 4 * plan.cooling(), plan.celsius() - 6 * plan.cooling()
    };
    TemperatureTrace trace = TemperatureTrace.logged(hours, celsius);
    RiseCurve curve =
        RiseModel.of(formula(plan), DoughTemperature.following(trace))
            .with(Belief.unknownsAt(x, "humilis/schoolfield"))
            .run(24);
    double end = part * curve.hoursToRise(Rise.ofPercent(70)).orElseThrow();
    for (double at = 1; at <= end; at += 0.5) {
      text.append(reading(plan, at, curve.riseAt(at), trace.celsius(at), x[LearningPrior.JAR]));
    }
  }

  private static DoughFormula formula(Plan plan) {
    return DoughFormula.builder()
        .flour(Flour.mix(List.of(part(FlourClass.WHITE, 80), part(FlourClass.WHOLEMEAL_WHEAT, 20))))
        .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(plan.starter())))
        .hydration(Share.ofPercent(plan.hydration()))
        .build();
  }

  private static Flour.Part part(FlourClass flour, double percent) {
    return new Flour.Part(flour.flour(), Share.ofPercent(percent));
  }

  private String reading(Plan plan, double at, Rise rise, double celsius, double jar) {
    double height = rise.heightTimes() * Math.exp(jar);
    double read =
        height + 0.6 * ReadingNoise.standard().riseDeviation(rise) * random.nextGaussian();
    double noted = Temperature.ofCelsius(celsius + plan.notedOff()).celsius();
    String clock = clock(plan.mixedMinute() + (int) Math.round(at * 60));
    return switch (plan.typed()) {
      case PERCENT -> line("%s,%.0f,%.1f,\n", clock, 100 * Math.max(read - 1, 0), noted);
      case MILLIMETRES -> line("%s,%.0f,%.1f,\n", clock, START_MM * Math.max(read, 1), noted);
      case DECIMAL_COMMA ->
          line(
              "%s;%.0f;%s;\n",
              clock, 100 * Math.max(read - 1, 0), line("%.1f", noted).replace('.', ','));
    };
  }

  private static String clock(int minute) {
    return line("%02d:%02d", minute / 60 % 24, minute % 60);
  }

  private static String line(String format, Object... values) {
    return String.format(Locale.ROOT, format, values);
  }
}
