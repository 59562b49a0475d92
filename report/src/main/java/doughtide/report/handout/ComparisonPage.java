package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.report.chart.ChartAxis;
import doughtide.report.chart.ChartCaption;
import doughtide.report.chart.LineSeries;
import doughtide.report.chart.LinesChart;
import doughtide.report.chart.PrintedChart;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TimeSpan;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;

/**
 * The same dough with one thing changed: small charts on one scale, all likely lines in one chart,
 * and the idea in numbers.
 *
 * @param title the question of the page
 * @param notes formula and conditions
 * @param markPercent the rise that is compared, in percent
 * @param cases two to six
 * @param idea the answer in the numbers of this page
 * @param questions what a class is asked about the charts; printed by {@link #exercise} only
 * @param cautions those that apply
 */
@Internal
public record ComparisonPage(
    String title,
    List<String> notes,
    double markPercent,
    List<Case> cases,
    String idea,
    List<Question> questions,
    List<String> cautions)
    implements Handout {

  /** The charts give way before a second side is taken. */
  private static final List<Double> SCALES = List.of(1.0, 0.9, 0.8, 0.7);

  /**
   * One of the doughs compared.
   *
   * @param name what was changed, short
   * @param mark when the rise passes the mark, absent when it never does
   */
  @Internal
  public record Case(String name, RiseChartData rise, Optional<TimeSpan> mark) {}

  /**
   * A question and what a teacher finds under it.
   *
   * @param text the question
   * @param answer in the numbers of this page
   */
  @Internal
  public record Question(String text, String answer) {}

  /** Who an exercise is for. */
  @Internal
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
    questions = List.copyOf(questions);
    cautions = List.copyOf(cautions);
    LinesChart.check(cases.size());
  }

  /** Charts in two rows are small already. */
  private List<Double> scales() {
    return cases.size() > 3 ? SCALES.subList(0, 2) : SCALES;
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    return pages(
        () -> new Page(format, words, title, date),
        page -> page.strong(idea),
        page -> told(page, words),
        words);
  }

  /** On one side, or on two with a chart on each; what is told stands with the lines compared. */
  private List<Page> pages(
      Supplier<Page> empty, UnaryOperator<Page> lead, UnaryOperator<Page> rest, Words words) {
    Drawn drawn = drawn(words);
    for (double scale : scales()) {
      Page whole = rest.apply(drawn.overlay(rows(drawn, lead.apply(empty.get()), scale), scale));
      if (whole.fits()) {
        return List.of(whole);
      }
    }
    Page columns = columns(drawn, lead.apply(empty.get()));
    Page small = columns.fits() ? columns : rows(drawn, lead.apply(empty.get()), 1);
    List<Page> halves = Page.sidesOf(small, rest.apply(drawn.overlay(empty.get(), 1)));
    List<Page> chartsFirst =
        Page.sidesOf(
            drawn.overlay(rows(drawn, lead.apply(empty.get()), 1), 1), rest.apply(empty.get()));
    return halves.size() <= chartsFirst.size() ? halves : chartsFirst;
  }

  private Page told(Page page, Words words) {
    page.table(table(words, Edition.TEACHER));
    cautions.forEach(page::caution);
    return page;
  }

  /**
   * The same charts with questions: for students with the answers left blank, for the teacher with
   * the answers.
   */
  public Handout exercise(Edition edition) {
    return (format, words, date) -> {
      String head = words.say("exercise." + edition.name(), Map.of("title", title));
      return pages(
          () -> new Page(format, words, head, date),
          page -> page,
          page -> asked(page, words, edition),
          words);
    };
  }

  private Page asked(Page page, Words words, Edition edition) {
    page.paragraph(words.say("exercise.read"));
    page.table(table(words, edition));
    if (edition == Edition.TEACHER) {
      double minutes = 60 * ComparisonContent.READING_ERROR_HOURS;
      page.paragraph(words.say("exercise.tolerance", Map.of("minutes", words.number(minutes, 0))));
    }
    int number = 1;
    for (Question question : questions) {
      page.paragraph(words.number(number, 0) + ". " + question.text());
      number++;
      if (edition == Edition.TEACHER) {
        page.strong(question.answer());
      } else {
        page.writingRoom("", 1);
      }
    }
    cautions.forEach(page::caution);
    return page;
  }

  /** The charts of the page, which are the same however large they become. */
  private record Drawn(
      List<PrintedChart> small, List<String> descriptions, PrintedChart lines, String described) {
    Page overlay(Page page, double scale) {
      double sizes = small.size() > 3 ? 17 : 12;
      return page.chart(lines, sizes * scale * page.sizePt(), described);
    }
  }

  private Drawn drawn(Words words) {
    return new Drawn(
        small(words), descriptions(words), overlay(words), words.say("compare.overlay"));
  }

  /** Small charts in one or two rows. */
  private Page rows(Drawn drawn, Page page, double scale) {
    int across = cases.size() == 4 ? 2 : Math.min(3, cases.size());
    double sizes = cases.size() > 4 ? 11 : cases.size() > 3 ? 9 : 10;
    return small(drawn, page, across, sizes * scale);
  }

  /** Charts wider than tall, on a side of their own. */
  private Page columns(Drawn drawn, Page page) {
    return small(drawn, page, cases.size() > 3 ? 2 : 1, 9);
  }

  private Page small(Drawn drawn, Page page, int across, double sizes) {
    notes.forEach(page::paragraph);
    return page.charts(drawn.small(), drawn.descriptions(), across, sizes * page.sizePt());
  }

  @Override
  public List<NamedChart> charts(Words words) {
    List<NamedChart> charts = new ArrayList<>();
    charts.add(
        new NamedChart(
            "overlay",
            overlay(words),
            new ChartCaption(title, words.say("compare.overlay"), words.language())));
    List<PrintedChart> small = small(words);
    List<String> descriptions = descriptions(words);
    for (int i = 0; i < small.size(); i++) {
      charts.add(
          new NamedChart(
              Integer.toString(i + 1),
              small.get(i),
              new ChartCaption(cases.get(i).name(), descriptions.get(i), words.language())));
    }
    return charts;
  }

  private double end() {
    return cases.stream()
        .mapToDouble(
            c ->
                c.mark()
                    .filter(TimeSpan::isClosed)
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
    List<List<String>> rows =
        cases.stream()
            .map(c -> List.of(c.name(), edition == Edition.TEACHER ? answer(c, words) : ""))
            .toList();
    String mark = words.say("compare.hoursTo", Map.of("rise", words.percent(markPercent, 0)));
    return new Table(
        List.of(
            new Table.Column(words.say("compare.case"), 1, Table.Kind.TEXT),
            new Table.Column(
                mark, 1, edition == Edition.TEACHER ? Table.Kind.STRONG : Table.Kind.WRITE)),
        rows);
  }

  private static String answer(Case one, Words words) {
    return one.mark().map(words::hoursSpan).orElseGet(() -> words.say("chart.notReached"));
  }
}
