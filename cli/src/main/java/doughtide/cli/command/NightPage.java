package doughtide.cli.command;

import doughtide.cli.args.Words;
import doughtide.cli.text.Paragraph;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BiFunction;

/** The part of the page from the end of bulk fermentation to the oven. */
public final class NightPage {

  private static final int LABEL = 15;
  private static final double[] CORE_CELSIUS = {10, 7, 5};

  private final RiseAnswer answer;
  private final ShapeForecast shape;
  private final ShapeForecast.Night night;
  private final BiFunction<String, TimeWindow, String> row;
  private final List<String> lines = new ArrayList<>();

  /**
   * @param answer the whole answer
   * @param night the likely night
   * @param row writes a row of the page's table
   */
  public NightPage(
      RiseAnswer answer, ShapeForecast.Night night, BiFunction<String, TimeWindow, String> row) {
    this.answer = answer;
    this.shape = answer.proof().orElseThrow().shape();
    this.night = night;
    this.row = row;
  }

  public List<String> lines() {
    lines.add("");
    lines.add("When to shape");
    lines.add(row.apply("end of bulk", shape.hours()));
    say("watch for", "a rise of " + range(shape.rise()));
    say("why then", why());
    lines.add("");
    lines.add("The loaf, shaped at that rise");
    if (night.coldFromHours().isPresent()) {
      cold();
    } else {
      say("into proof", at(night.proofFromHours()));
    }
    say("into the oven", at(night.ovenHours()) + ", risen " + range(night.riseAtBake()));
    lines.add(row.apply("good from", night.bakeFrom()));
    lines.add(row.apply("good until", night.bakeUntil()));
    lines.add(row.apply("past its best", night.over()));
    night.warmer().ifPresent(this::warmer);
    return lines;
  }

  private String why() {
    String reason =
        night.coldFromHours().isPresent()
            ? "the loaf goes on rising until its middle is cold, and the warmer and livelier the"
                + " dough, the further"
            : "the loaf goes on rising through rest and proof";
    return reason
        + "; at the oven it should have risen "
        + RisePage.whole(shape.target().percent());
  }

  private void cold() {
    say("into the cold", at(night.coldFromHours().getAsDouble()));
    for (double celsius : CORE_CELSIUS) {
      OptionalDouble hours = night.coreAt(Temperature.ofCelsius(celsius));
      say(
          "middle " + Words.rounded(celsius, 0) + " °C",
          hours.isPresent() && hours.getAsDouble() <= night.ovenHours()
              ? at(hours.getAsDouble())
              : "not as cold as that before the oven");
    }
  }

  private void warmer(ShapeForecast.WarmerCold warmer) {
    String until =
        warmer.bakeUntil().isPresent()
            ? ", good until " + at(warmer.bakeUntil().getAsDouble())
            : "";
    say(
        "fridge warmer",
        "if it is "
            + Words.rounded(warmer.byCelsius(), 0)
            + " °C warmer than believed, the loaf has risen "
            + RisePage.whole(warmer.riseAtBakePercent())
            + " at the oven"
            + until);
  }

  private String at(double hours) {
    return answer
        .clock()
        .map(times -> Words.about(hours) + ", " + times.about(hours))
        .orElseGet(() -> Words.about(hours));
  }

  private static String range(ShapeForecast.RiseRange rise) {
    if (rise.likely().isEmpty()) {
      return "–";
    }
    String likely = RisePage.whole(rise.likely().getAsDouble());
    return rise.low().isEmpty() || rise.high().isEmpty()
        ? likely
        : likely
            + " ("
            + RisePage.whole(rise.low().getAsDouble())
            + " to "
            + RisePage.whole(rise.high().getAsDouble())
            + ")";
  }

  private void say(String label, String text) {
    lines.addAll(Paragraph.lines(RisePage.padded(label, LABEL), text));
  }
}
