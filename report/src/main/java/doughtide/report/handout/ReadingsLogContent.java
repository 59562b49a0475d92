package doughtide.report.handout;

import doughtide.core.dough.DoughFormula;
import doughtide.report.page.Table;
import doughtide.report.words.TypedWords;
import doughtide.report.words.Words;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Fills a readings log, in the words by which a file of readings is read. */
final class ReadingsLogContent {

  static final String ROOM_TO_WRITE = "\u00a0".repeat(16);

  private static final String[] COLUMNS = {"time", "height", "dough-temp", "ph", "note"};
  private static final double[] WEIGHTS = {3, 3, 3.5, 1.5, 6};

  private final Words words;
  private final TypedWords typed;
  private final Optional<HandoutDough> dough;

  ReadingsLogContent(Words words, Optional<HandoutDough> dough) {
    this.words = words;
    this.typed = new TypedWords(words);
    this.dough = dough;
  }

  BlankForm form(int lines) {
    return new BlankForm(
        words.say("log.title"),
        List.of(
            words.say("log.explain", Map.of("startHeight", typed.key("start-height"))),
            words.say("log.typed", Map.of("columns", typed.columns(COLUMNS)))),
        List.of(),
        List.of(head(), readings(lines)),
        List.of(words.say("caution.jar") + " " + words.say("caution.rawDough")),
        0);
  }

  private Table head() {
    Optional<DoughFormula> formula = dough.map(HandoutDough::formula);
    List<String> cells = new ArrayList<>();
    add(cells, "flour", formula.map(this::flour));
    add(cells, "starter", formula.map(f -> typed.percent(100 * f.starterOfAddedFlour())));
    add(cells, "hydration", formula.map(f -> typed.percent(f.hydration().percent())));
    add(
        cells,
        "starter-hydration",
        formula.map(f -> typed.percent(f.starter().hydration().percent())));
    add(cells, "salt", formula.map(f -> typed.percent(f.salt().percent())));
    add(cells, "dough-temp", Optional.of(ROOM_TO_WRITE + typed.degrees()));
    add(cells, "mixed-at", Optional.empty());
    add(cells, "start-height", Optional.of(ROOM_TO_WRITE + "mm"));
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

  private void add(List<String> cells, String key, Optional<String> value) {
    cells.add(typed.key(key) + ":");
    cells.add(value.orElse(""));
  }

  private Table readings(int lines) {
    List<Table.Column> columns = new ArrayList<>();
    for (int i = 0; i < COLUMNS.length; i++) {
      columns.add(new Table.Column(typed.column(COLUMNS[i]), WEIGHTS[i], Table.Kind.WRITE));
    }
    return new Table(columns, Collections.nCopies(lines, Collections.nCopies(columns.size(), "")));
  }

  /** As a file of readings takes it; empty for flours known by another name. */
  private String flour(DoughFormula formula) {
    return formula.flour().hasOwnName() ? "" : typed.flour(formula.flour());
  }
}
