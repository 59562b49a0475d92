package doughtide.report.handout;

import doughtide.core.dough.Ingredients;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.page.Table;
import doughtide.report.words.TypedWords;
import doughtide.report.words.Words;
import java.time.LocalDate;
import java.util.Collections;
import java.util.List;
import java.util.Map;

/**
 * One student's page of a class: what to weigh, when to do what, and room for readings, in the
 * student's own language whatever the language of the other pages.
 *
 * @param name of the student, printed as it is
 * @param loaves how many
 * @param grams what to weigh for all of them
 * @param sheet the day of the dough
 * @param own the words of the student's language
 */
public record StudentPage(String name, int loaves, Ingredients grams, BakeSheet sheet, Words own)
    implements Handout {

  private static final int LINES = 5;

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    Page page = new Page(format, own, name, date);
    sheet.answer().ifPresent(page::strong);
    sheet.rise().subtitle().forEach(page::paragraph);
    page.table(weighed());
    page.table(sheet.table(own));
    page.table(readings());
    sheet.cautions().forEach(page::caution);
    return page.writingRoom(own.say("sheet.notes"), 0).sides();
  }

  private Table weighed() {
    List<Table.Column> columns =
        List.of(
            new Table.Column(own.say("student.loaves"), 1, Table.Kind.TEXT),
            new Table.Column(own.say("bowl.flour"), 1, Table.Kind.STRONG),
            new Table.Column(own.say("bowl.water"), 1, Table.Kind.STRONG),
            new Table.Column(own.say("student.starter"), 1, Table.Kind.STRONG),
            new Table.Column(own.say("student.salt"), 1, Table.Kind.STRONG));
    return new Table(
        columns,
        List.of(
            List.of(
                own.number(loaves, 0),
                grams(grams.flourGrams(), 0),
                grams(grams.waterGrams(), 0),
                grams(grams.starterGrams(), 0),
                grams(grams.saltGrams(), 1))));
  }

  private String grams(double mass, int decimals) {
    return own.say("student.grams", Map.of("grams", own.number(mass, decimals)));
  }

  private Table readings() {
    TypedWords typed = new TypedWords(own);
    List<Table.Column> columns =
        List.of(
            new Table.Column(typed.column("time"), 2, Table.Kind.WRITE),
            new Table.Column(typed.column("height"), 2, Table.Kind.WRITE),
            new Table.Column(typed.column("dough-temp"), 2.5, Table.Kind.WRITE),
            new Table.Column(typed.column("note"), 5, Table.Kind.WRITE));
    return new Table(columns, Collections.nCopies(LINES, Collections.nCopies(4, "")));
  }
}
