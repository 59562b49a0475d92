package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.chart.ChartAxis;
import doughtide.report.chart.ChartCaption;
import doughtide.report.chart.LineSeries;
import doughtide.report.chart.LinesChart;
import doughtide.report.chart.PrintedChart;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.List;

/**
 * What happens through one bulk fermentation, on two sides: how far the dough rises, where the
 * carbon dioxide is, who lives in the dough, how sour it becomes and how much strength is left.
 *
 * @param notes formula and temperatures
 * @param rise gain in volume, in percent
 * @param carbonDioxide litres per kilogram of dough, at the pressure of the place: dissolved, in
 *     the gas cells, lost
 * @param life percent of a ripe population: yeast, lactic bacteria
 * @param acidity pH
 * @param strength share of the strength after mixing, in percent
 * @param idea what the page shows, in its own numbers
 * @param cautions those that apply
 */
@Internal
public record WhyItRisesPage(
    List<String> notes,
    LineSeries rise,
    List<LineSeries> carbonDioxide,
    List<LineSeries> life,
    LineSeries acidity,
    LineSeries strength,
    String idea,
    List<String> cautions)
    implements Handout {

  /** Copies the lists. */
  public WhyItRisesPage {
    notes = List.copyOf(notes);
    carbonDioxide = List.copyOf(carbonDioxide);
    life = List.copyOf(life);
    cautions = List.copyOf(cautions);
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    double least = 9.5 * format.text().sizePt();
    Page second = new Page(format, words, words.say("why.title"), date);
    return Page.sidesOf(gas(format, words, date, least), sour(second, least, words));
  }

  private Page gas(PageFormat format, Words words, LocalDate date, double least) {
    Page page = new Page(format, words, words.say("why.title"), date).strong(idea);
    notes.forEach(page::paragraph);
    page.paragraph(words.say("why.likely"));
    page.chart(riseChart(words), least, words.say("why.riseExplain"));
    page.chart(gasChart(words), 1.2 * least, words.say("why.gasExplain"));
    return page.paragraph(words.say("why.gasExplain"));
  }

  private Page sour(Page page, double least, Words words) {
    page.chart(lifeChart(words), least, words.say("why.lifeExplain"));
    page.paragraph(words.say("why.lifeExplain"));
    page.charts(
        List.of(acidChart(words), strengthChart(words)),
        List.of(words.say("why.acid"), words.say("why.strength")),
        2,
        least);
    page.paragraph(words.say("why.acidExplain"));
    cautions.forEach(page::caution);
    return page;
  }

  @Override
  public List<NamedChart> charts(Words words) {
    return List.of(
        named("rise", riseChart(words), words.say("why.riseExplain"), words),
        named("gas", gasChart(words), words.say("why.gas"), words),
        named("life", lifeChart(words), words.say("why.life"), words),
        named("acid", acidChart(words), words.say("why.acid"), words),
        named("strength", strengthChart(words), words.say("why.strength"), words));
  }

  private static NamedChart named(String name, PrintedChart chart, String title, Words words) {
    return new NamedChart(name, chart, new ChartCaption(title, title, words.language()));
  }

  private PrintedChart riseChart(Words words) {
    return LinesChart.of(
        words.say("why.rise"), words.say("chart.rise") + ", %", List.of(rise), words);
  }

  private PrintedChart gasChart(Words words) {
    return LinesChart.of(words.say("why.gas"), words.say("why.gasUnit"), carbonDioxide, words);
  }

  private PrintedChart lifeChart(Words words) {
    return LinesChart.of(words.say("why.life"), words.say("why.lifeUnit"), life, words);
  }

  private PrintedChart acidChart(Words words) {
    return LinesChart.of(words.say("why.acid"), words.say("why.acidUnit"), List.of(acidity), words);
  }

  private PrintedChart strengthChart(Words words) {
    double[] hours = strength.hours();
    ChartAxis up = ChartAxis.every(25, 0, 110, "%", v -> words.number(v, 0));
    return LinesChart.of(
        words.say("why.strength"), "%", List.of(strength), up, hours[hours.length - 1], words);
  }
}
