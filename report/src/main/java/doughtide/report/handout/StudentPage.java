package doughtide.report.handout;

import doughtide.core.Internal;
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
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One student's page of a class: what to weigh, when to do what, and room for readings, in the
 * student's own language whatever the language of the other pages.
 *
 * @param name of the student, printed as it is
 * @param loaves how many
 * @param grams what to weigh for all of them
 * @param dough what its day says
 * @param own the words of the student's language
 */
@Internal
public record StudentPage(String name, int loaves, Ingredients grams, Dough dough, Words own)
    implements Handout {

  private static final int MOST_LINES = 5;
  private static final int LEAST_LINES = 3;

  /**
   * The day of a dough, in the student's language.
   *
   * @param answer when to shape and at which height of the jar, in a sentence; empty if unknown
   * @param notes what it is made of and how it is kept
   * @param steps when to do what
   * @param cautions those that apply
   */
  @Internal
  public record Dough(
      Optional<String> answer, List<String> notes, Table steps, List<String> cautions) {
    /** Copies the lists. */
    public Dough {
      notes = List.copyOf(notes);
      cautions = List.copyOf(cautions);
    }
  }

  /** A page with the day of a bake sheet. */
  public StudentPage(String name, int loaves, Ingredients grams, BakeSheet sheet, Words own) {
    this(
        name,
        loaves,
        grams,
        new Dough(sheet.answer(), sheet.rise().subtitle(), sheet.table(own), sheet.cautions()),
        own);
  }

  @Override
  public List<Page> pages(PageFormat format, Words words, LocalDate date) {
    for (int lines = MOST_LINES; lines > LEAST_LINES; lines--) {
      Page page = page(format, date, lines);
      if (page.fits()) {
        return List.of(page);
      }
    }
    return page(format, date, LEAST_LINES).sides();
  }

  private Page page(PageFormat format, LocalDate date, int lines) {
    Page page = new Page(format, own, name, date);
    dough.answer().ifPresent(page::strong);
    dough.notes().forEach(page::paragraph);
    page.table(weighed());
    additions().ifPresent(page::paragraph);
    page.table(dough.steps());
    page.writingLine(new TypedWords(own).key("start-height") + " (mm):");
    page.table(readings(lines));
    dough.cautions().forEach(page::caution);
    return page.writingRoom(own.say("sheet.notes"), 0);
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

  private Optional<String> additions() {
    return grams.additions().isEmpty()
        ? Optional.empty()
        : Optional.of(
            grams.additions().stream()
                .map(each -> own.named("ingredient", each.name()) + " " + grams(each.grams(), 0))
                .collect(Collectors.joining(", ")));
  }

  private String grams(double mass, int decimals) {
    return own.say("student.grams", Map.of("grams", own.number(mass, decimals)));
  }

  private Table readings(int lines) {
    TypedWords typed = new TypedWords(own);
    List<Table.Column> columns =
        List.of(
            new Table.Column(typed.column("time"), 2, Table.Kind.WRITE),
            new Table.Column(typed.column("height"), 2, Table.Kind.WRITE),
            new Table.Column(typed.column("dough-temp"), 2.5, Table.Kind.WRITE),
            new Table.Column(typed.column("note"), 5, Table.Kind.WRITE));
    return new Table(columns, Collections.nCopies(lines, Collections.nCopies(4, "")));
  }
}
