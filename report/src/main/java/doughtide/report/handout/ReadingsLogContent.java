package doughtide.report.handout;

import doughtide.core.document.Catalogue;
import doughtide.core.dough.DoughFormula;
import doughtide.core.quantity.Checks;
import doughtide.report.page.Table;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * Fills a readings log. The words of its lines and columns are those that a file of readings is
 * read by, in every language; other languages say beside them what they mean.
 */
public final class ReadingsLogContent {

  private static final String ROOM_TO_WRITE = "\u00a0".repeat(16);

  private final Words words;
  private final Optional<HandoutDough> dough;

  ReadingsLogContent(Words words, Optional<HandoutDough> dough) {
    this.words = words;
    this.dough = dough;
  }

  BlankForm form(int lines) {
    return new BlankForm(
        words.say("log.title"),
        List.of(words.say("log.explain"), words.say("log.typed")),
        List.of(),
        List.of(head(), readings(lines)),
        List.of(words.say("caution.jar") + " " + words.say("caution.rawDough")));
  }

  private Table head() {
    Optional<DoughFormula> formula = dough.map(HandoutDough::formula);
    List<String> cells = new ArrayList<>();
    add(cells, "flour:", "flour", formula.map(ReadingsLogContent::flour));
    add(cells, "starter:", "starter", formula.map(f -> percent(100 * f.starterOfAddedFlour())));
    add(cells, "hydration:", "hydration", formula.map(f -> percent(f.hydration().percent())));
    add(
        cells,
        "starter hydration:",
        "starterHydration",
        formula.map(f -> percent(f.starter().hydration().percent())));
    add(cells, "salt:", "salt", formula.map(f -> percent(f.salt().percent())));
    add(cells, "dough temp:", "doughTemp", Optional.of(ROOM_TO_WRITE + "C"));
    add(cells, "mixed at:", "mixedAt", Optional.empty());
    add(cells, "start height:", "startHeight", Optional.of(ROOM_TO_WRITE + "mm"));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < cells.size(); i += 4) {
      rows.add(cells.subList(i, i + 4));
    }
    return new Table(
        List.of(
            new Table.Column(words.say("log.word"), 4.5, Table.Kind.TEXT),
            new Table.Column(words.say("log.value"), 3.5, Table.Kind.WRITE),
            new Table.Column(words.say("log.word"), 4.5, Table.Kind.TEXT),
            new Table.Column(words.say("log.value"), 3.5, Table.Kind.WRITE)),
        rows);
  }

  private void add(List<String> cells, String word, String meaning, Optional<String> value) {
    cells.add(word + meant(meaning));
    cells.add(value.orElse(""));
  }

  /** Nothing in English, where the word says it itself. */
  private String meant(String meaning) {
    return words.language() == Language.ENGLISH
        ? ""
        : " (" + words.say("log.says." + meaning) + ")";
  }

  private Table readings(int lines) {
    List<Table.Column> columns =
        List.of(
            new Table.Column("time" + meant("time"), 3, Table.Kind.WRITE),
            new Table.Column("height mm" + meant("height"), 3, Table.Kind.WRITE),
            new Table.Column("dough temp C" + meant("temp"), 3.5, Table.Kind.WRITE),
            new Table.Column("pH", 1.5, Table.Kind.WRITE),
            new Table.Column("note" + meant("note"), 6, Table.Kind.WRITE));
    return new Table(columns, Collections.nCopies(lines, Collections.nCopies(columns.size(), "")));
  }

  /** As a file of readings takes it; empty for flours known by another name. */
  private static String flour(DoughFormula formula) {
    return formula.flour().hasOwnName() ? "" : Catalogue.text(formula.flour());
  }

  private static String percent(double value) {
    return Checks.plain(Math.rint(value * 10) / 10) + "%";
  }
}
