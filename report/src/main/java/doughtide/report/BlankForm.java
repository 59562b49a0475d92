package doughtide.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A page to write on: fields to fill in, then a table with blank columns. The readings log and the
 * bowl worksheet are forms.
 *
 * @param title of the page
 * @param explanation how to use it
 * @param fields what to fill in once
 * @param table what to fill in line by line
 * @param cautions those that apply
 */
public record BlankForm(
    String title,
    List<String> explanation,
    List<String> fields,
    Table table,
    List<String> cautions) {

  /** Copies the lists. */
  public BlankForm {
    explanation = List.copyOf(explanation);
    fields = List.copyOf(fields);
    cautions = List.copyOf(cautions);
  }

  /**
   * A log of readings of one dough.
   *
   * @param lines how many readings, 1 to 30
   */
  public static BlankForm readingsLog(Words words, int lines) {
    List<Table.Column> columns =
        List.of(
            new Table.Column(words.say("log.clock"), 3, Table.Kind.WRITE),
            new Table.Column(words.say("log.hours"), 3, Table.Kind.WRITE),
            new Table.Column(words.say("log.height"), 3, Table.Kind.WRITE),
            new Table.Column(words.say("log.temperature"), 3, Table.Kind.WRITE),
            new Table.Column(words.say("log.notes"), 6, Table.Kind.WRITE));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < Math.max(1, Math.min(30, lines)); i++) {
      rows.add(Collections.nCopies(columns.size(), ""));
    }
    return new BlankForm(
        words.say("log.title"),
        List.of(words.say("log.explain")),
        List.of(words.say("log.dough"), words.say("log.mixedAt"), words.say("log.startHeight")),
        new Table(columns, rows),
        List.of(words.say("caution.jar"), words.say("caution.rawDough")));
  }

  /**
   * The worksheet of a water trial.
   *
   * @param flour which flour
   * @param bowls hydration and grams of flour, water and salt of each bowl, already in words
   */
  public static BlankForm bowls(Words words, String flour, List<Bowl> bowls) {
    List<Table.Column> columns =
        List.of(
            new Table.Column(words.say("bowl.number"), 2, Table.Kind.STRONG),
            new Table.Column(words.say("bowl.hydration"), 3, Table.Kind.TEXT),
            new Table.Column(words.say("bowl.flour"), 2, Table.Kind.TEXT),
            new Table.Column(words.say("bowl.water"), 2, Table.Kind.TEXT),
            new Table.Column(words.say("bowl.grade"), 3, Table.Kind.WRITE),
            new Table.Column(words.say("log.notes"), 6, Table.Kind.WRITE));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < bowls.size(); i++) {
      Bowl bowl = bowls.get(i);
      rows.add(
          List.of(
              words.number(i + 1, 0),
              words.percent(bowl.hydrationPercent(), 0),
              words.number(bowl.flourGrams(), 0) + "\u00a0g",
              words.number(bowl.waterGrams(), 0) + "\u00a0g",
              "",
              ""));
    }
    return new BlankForm(
        words.say("bowl.title"),
        List.of(words.say("bowl.explain")),
        List.of(words.say("bowl.flour") + ": " + flour, words.say("bowl.conditions")),
        new Table(columns, rows),
        List.of(words.say("caution.rawDough")));
  }

  /**
   * A bowl of a water trial.
   *
   * @param hydrationPercent water per flour, in percent
   * @param flourGrams g
   * @param waterGrams g
   */
  public record Bowl(double hydrationPercent, double flourGrams, double waterGrams) {}

  /**
   * The one page.
   *
   * @param date printed at the foot
   */
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, words, title, date);
    explanation.forEach(page::paragraph);
    fields.forEach(field -> page.writingLine(field));
    page.table(table);
    cautions.forEach(page::caution);
    return List.of(page.writingRoom(words.say("sheet.notes"), 0));
  }
}
