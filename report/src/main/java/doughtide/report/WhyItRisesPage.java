package doughtide.report;

import java.time.LocalDate;
import java.util.List;

/**
 * What happens unseen through one bulk fermentation: where the carbon dioxide is, who lives in the
 * dough, how sour it becomes and how much strength is left.
 *
 * @param notes formula and temperatures
 * @param carbonDioxide millimoles per kilogram of dough: dissolved, in the gas cells, lost
 * @param life decimal logarithm of cells per gram: yeast, lactic bacteria
 * @param acidity pH
 * @param strength share of the strength after mixing, in percent
 * @param cautions those that apply
 */
public record WhyItRisesPage(
    List<String> notes,
    List<LineSeries> carbonDioxide,
    List<LineSeries> life,
    LineSeries acidity,
    LineSeries strength,
    List<String> cautions) {

  /** Copies the lists. */
  public WhyItRisesPage {
    notes = List.copyOf(notes);
    carbonDioxide = List.copyOf(carbonDioxide);
    life = List.copyOf(life);
    cautions = List.copyOf(cautions);
  }

  /**
   * One page; in large print two, the second with acidity and strength.
   *
   * @param date printed at the foot
   */
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    double least = 10 * format.text().sizePt();
    Page page = new Page(format, words, words.say("why.title"), date);
    notes.forEach(page::paragraph);
    page.chart(
        LinesChart.of(words.say("why.gas"), words.say("why.gasUnit"), carbonDioxide, words),
        1.3 * least,
        words.say("why.gasExplain"));
    page.paragraph(words.say("why.gasExplain"));
    page.chart(
        LinesChart.of(words.say("why.life"), words.say("why.lifeUnit"), life, words),
        least,
        words.say("why.lifeExplain"));
    page.paragraph(words.say("why.lifeExplain"));
    if (format.text() == PageFormat.TextSize.STANDARD) {
      return List.of(sour(page, least, words));
    }
    return List.of(page, sour(new Page(format, words, words.say("why.title"), date), least, words));
  }

  private Page sour(Page page, double least, Words words) {
    page.charts(
        List.of(
            LinesChart.of(words.say("why.acid"), "pH", List.of(acidity), words),
            LinesChart.of(words.say("why.strength"), "%", List.of(strength), words)),
        List.of(words.say("why.acid"), words.say("why.strength")),
        2,
        least);
    page.paragraph(words.say("why.acidExplain"));
    cautions.forEach(page::caution);
    return page;
  }
}
