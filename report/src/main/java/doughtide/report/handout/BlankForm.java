package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Grade;
import doughtide.core.flourtrial.Scale;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TrialWords;
import doughtide.report.words.TypedWords;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A page to write on: fields to fill in, then a table with blank columns. The readings log and the
 * bowl worksheet are forms.
 *
 * @param title of the page
 * @param explanation how to use it
 * @param fields what to fill in once
 * @param tables one or more; the last is filled in line by line
 * @param cautions those that apply
 * @param spareLines of the last table, which are left out where the page would else take two sides
 */
@Internal
public record BlankForm(
    String title,
    List<String> explanation,
    List<String> fields,
    List<Table> tables,
    List<String> cautions,
    int spareLines)
    implements Handout {

  /** Copies the lists. */
  public BlankForm {
    explanation = List.copyOf(explanation);
    fields = List.copyOf(fields);
    tables = List.copyOf(tables);
    cautions = List.copyOf(cautions);
  }

  /**
   * A log of readings of one dough, with the very words that a file of readings is read by.
   *
   * @param dough filled in where it is given
   * @param lines how many readings, 1 to 30
   */
  public static BlankForm readingsLog(Words words, Optional<HandoutDough> dough, int lines) {
    return new ReadingsLogContent(words, dough).form(Math.max(1, Math.min(30, lines)));
  }

  /**
   * The worksheet of a water trial.
   *
   * @param flour which flour
   */
  public static BlankForm bowls(Words words, Flour flour, BowlPlan plan) {
    BowlTest test = BowlTest.of(flour);
    List<Table.Column> columns =
        List.of(
            new Table.Column(words.say("bowl.number"), 2, Table.Kind.STRONG),
            new Table.Column(words.say("bowl.hydration"), 2, Table.Kind.TEXT),
            new Table.Column(words.say("bowl.flour"), 2, Table.Kind.TEXT),
            new Table.Column(words.say("bowl.water"), 2, Table.Kind.TEXT),
            new Table.Column(words.say("bowl.mixed"), 2.5, Table.Kind.WRITE),
            new Table.Column(words.say("bowl.grade"), 5, Table.Kind.WRITE),
            new Table.Column(words.say("log.notes"), 5, Table.Kind.WRITE));
    List<List<String>> rows =
        plan.bowls().stream().map(bowl -> row(words, bowl, plan.scale())).toList();
    Table grades =
        new Table(
            List.of(
                new Table.Column(words.say("bowl.grades"), 2, Table.Kind.STRONG),
                new Table.Column(words.say("bowl.look"), 4, Table.Kind.TEXT)),
            Arrays.stream(Grade.values())
                .map(
                    grade ->
                        List.of(
                            TrialWords.grade(words, test, grade),
                            TrialWords.look(words, test, grade)))
                .toList());
    return new BlankForm(
        words.say("bowl.title"),
        List.of(
            words.capitalized(new FormulaWords(words).flour(flour)) + ".",
            TrialWords.explain(words, test, plan),
            words.say(
                "bowl.typed",
                Map.of(
                    "columns",
                    new TypedWords(words).columns("trial", "person", "hydration", "grade")))),
        List.of(words.say("bowl.conditions")),
        List.of(grades, new Table(columns, rows)),
        List.of(words.say("caution.rawDough") + " " + new FormulaWords(words).allergens(flour)),
        0);
  }

  private static List<String> row(Words words, BowlPlan.Bowl bowl, Scale scale) {
    int decimals = (int) Math.max(0, Math.ceil(-Math.log10(scale.resolutionGrams()) - 1e-9));
    return List.of(
        words.number(bowl.number(), 0),
        new FormulaWords(words).percent(bowl.truePercent()),
        words.number(bowl.flourGrams(), decimals) + "\u00a0g",
        words.number(bowl.waterGrams(), decimals) + "\u00a0g",
        "",
        "",
        "");
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    List<Page> whole = pages(format, words, date, 0);
    for (int left = 1; left <= spareLines && whole.size() > 1; left++) {
      List<Page> shorter = pages(format, words, date, left);
      if (shorter.size() < whole.size()) {
        return shorter;
      }
    }
    return whole;
  }

  private List<Page> pages(PageFormat format, Words words, LocalDate date, int leftOut) {
    Page page = new Page(format, words, title, date);
    explanation.forEach(page::paragraph);
    tables.subList(0, tables.size() - 1).forEach(page::table);
    fields.forEach(page::writingLine);
    Table last = tables.get(tables.size() - 1);
    page.table(new Table(last.columns(), last.rows().subList(0, last.rows().size() - leftOut)));
    cautions.forEach(page::caution);
    page.writingRoom(words.say("sheet.notes"), 0);
    return page.sides();
  }
}
