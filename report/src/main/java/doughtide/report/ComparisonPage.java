package doughtide.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The same dough with one thing changed: small charts on one scale, all likely lines in one chart,
 * and the idea in numbers.
 *
 * @param title the question of the page
 * @param notes formula and conditions
 * @param markPercent the rise that is compared, in percent
 * @param cases two to six
 * @param idea the answer in the numbers of this page
 * @param cautions those that apply
 */
public record ComparisonPage(
    String title,
    List<String> notes,
    double markPercent,
    List<Case> cases,
    String idea,
    List<String> cautions) {

  /**
   * One of the doughs compared.
   *
   * @param name what was changed, short
   * @param mark when the rise passes the mark, absent when it never does
   */
  public record Case(String name, RiseChartData rise, Optional<TimeSpan> mark) {}

  /** Who the page is for. */
  public enum Edition {
    /** With the answers. */
    TEACHER,
    /** With the answers left blank. */
    STUDENT
  }

  /** Checks the number of cases. */
  public ComparisonPage {
    notes = List.copyOf(notes);
    cases = List.copyOf(cases);
    cautions = List.copyOf(cautions);
    LinesChart.check(cases.size());
  }

  /**
   * One page; in large print two, the second with the answers.
   *
   * @param date printed at the foot
   */
  public List<Page> pages(PageFormat format, Words words, LocalDate date, Edition edition) {
    Page page = new Page(format, words, title, date);
    notes.forEach(page::paragraph);
    double size = format.text().sizePt();
    page.charts(small(words), descriptions(words), Math.min(3, cases.size()), 10.5 * size);
    page.chart(overlay(words), 13 * size, words.say("compare.overlay"));
    if (format.text() == PageFormat.TextSize.STANDARD) {
      return List.of(answers(page, words, edition));
    }
    return List.of(page, answers(new Page(format, words, title, date), words, edition));
  }

  private Page answers(Page page, Words words, Edition edition) {
    page.table(table(words, edition));
    if (edition == Edition.TEACHER) {
      page.paragraph(idea);
    } else {
      page.writingRoom(words.say("compare.yourIdea"), 2);
    }
    cautions.forEach(page::caution);
    return page;
  }

  private double end() {
    return cases.stream()
        .mapToDouble(
            c ->
                c.mark()
                    .map(m -> Math.max(1, m.lateHours() * 1.15))
                    .orElse(c.rise().hours()[c.rise().hours().length - 1]))
        .max()
        .orElseThrow();
  }

  private ChartAxis up(Words words) {
    double top = 50 * Math.ceil(Math.min(400, Math.max(50, markPercent * 1.3)) / 50);
    return ChartAxis.every(
        top > 200 ? 100 : 50, 0, top, words.say("chart.rise"), v -> words.percent(v, 0));
  }

  private List<PrintedChart> small(Words words) {
    List<PrintedChart> charts = new ArrayList<>();
    for (Case one : cases) {
      charts.add(
          RiseChart.small(
              one.name(), one.rise(), one.mark(), markPercent, end(), up(words), words));
    }
    return charts;
  }

  private List<String> descriptions(Words words) {
    return cases.stream().map(c -> c.name() + ": " + answer(c, words)).toList();
  }

  private PrintedChart overlay(Words words) {
    List<LineSeries> lines =
        cases.stream()
            .map(c -> new LineSeries(c.name(), c.rise().hours(), c.rise().likelyPercent()))
            .toList();
    return LinesChart.of("", words.say("chart.rise"), lines, up(words), end(), words);
  }

  private Table table(Words words, Edition edition) {
    List<List<String>> rows = cases.stream().map(c -> List.of(c.name(), answer(c, words))).toList();
    String mark = words.say("compare.hoursTo", Map.of("rise", words.percent(markPercent, 0)));
    return new Table(
        List.of(
            new Table.Column(words.say("compare.case"), 1, Table.Kind.TEXT),
            new Table.Column(
                mark, 1, edition == Edition.TEACHER ? Table.Kind.STRONG : Table.Kind.WRITE)),
        rows);
  }

  private static String answer(Case one, Words words) {
    return one.mark()
        .map(m -> words.hoursSpan(m.earlyHours(), m.lateHours()))
        .orElseGet(() -> words.say("chart.notReached"));
  }
}
