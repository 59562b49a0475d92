package doughtide.cli.answer;

import doughtide.cli.args.Speech;
import doughtide.cli.text.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * An answer as a page of text of at most 80 columns: the headline, then one block after another.
 * Windows of time stand in columns, early, likely and late, below a head that is repeated only
 * where the hours count from something else.
 */
final class AnswerText {

  private static final int GAP = 2;
  private static final int WIDEST_LABEL = 40;
  private static final int HOURS = 14;
  private static final int CLOCK = 11;
  private static final Pattern TWICE = Pattern.compile("\\d\\d:\\d\\d[AB]\\b");

  /** A line, or several that belong together. */
  private sealed interface Line {
    record Pair(String label, String text) implements Line {}

    record Window(String label, Value.Window window) implements Line {}

    record Text(String text, int hanging) implements Line {}

    record Table(List<List<String>> rows) implements Line {}
  }

  /** What stands between two empty lines. */
  private record Block(String heading, List<Line> lines) {}

  private final Speech speech;
  private final TextPage page = new TextPage();
  private final List<Block> blocks = new ArrayList<>();
  private int timeLabels;
  private Optional<Timeline> head = Optional.empty();
  private boolean twiceSaid;

  private AnswerText(Speech speech) {
    this.speech = speech;
  }

  static List<String> of(Answer answer) {
    AnswerText text = new AnswerText(answer.speech());
    answer.headline().lines().forEach(text.page::sentence);
    text.collect(answer.body());
    text.timeLabels = text.widthOfTimeLabels();
    text.blocks.forEach(text::print);
    return text.page.lines();
  }

  private void collect(Section section) {
    Block block = begin(section.heading());
    for (Item item : section.items()) {
      block = collect(item, block);
    }
  }

  private Block begin(String heading) {
    Block block = new Block(heading, new ArrayList<>());
    blocks.add(block);
    return block;
  }

  /** Adds an item to the block, or gives it one of its own and returns the block after it. */
  private Block collect(Item item, Block block) {
    if (item instanceof Section section) {
      boolean inline = section.heading().isEmpty() && !section.key().isEmpty();
      if (inline) {
        Block same = block;
        for (Item each : section.items()) {
          same = collect(each, same);
        }
        return same;
      }
      collect(section);
      return begin("");
    }
    if (item instanceof Listing listing) {
      return collect(listing, block);
    }
    add(item, block.lines());
    return block;
  }

  private Block collect(Listing listing, Block block) {
    Block into = listing.heading().isEmpty() ? block : begin(listing.heading());
    if (listing.rows().stream().anyMatch(AnswerText::hasWindow)) {
      for (Section row : listing.rows()) {
        List<Line> lines = row.heading().isEmpty() ? into.lines() : begin(row.heading()).lines();
        row.items().forEach(item -> add(item, lines));
      }
    } else {
      table(listing).ifPresent(into.lines()::add);
    }
    return listing.heading().isEmpty() ? block : begin("");
  }

  private static boolean hasWindow(Section row) {
    return row.items().stream()
        .anyMatch(
            item ->
                item instanceof Item.Quantity q
                    && q.value() instanceof Value.Window
                    && !q.label().isEmpty());
  }

  private void add(Item item, List<Line> lines) {
    if (item instanceof Item.Sentence sentence) {
      lines.add(new Line.Text(sentence.text(), sentence.hanging()));
    } else if (item instanceof Item.Texts texts && !texts.lead().isEmpty()) {
      int hanging = texts.lead().startsWith("-") ? texts.lead().length() : 0;
      texts.texts().forEach(text -> lines.add(new Line.Text(texts.lead() + text, hanging)));
    } else if (item instanceof Item.Quantity quantity && !quantity.label().isEmpty()) {
      lines.add(
          quantity.value() instanceof Value.Window window
              ? new Line.Window(quantity.label(), window)
              : new Line.Pair(quantity.label(), quantity.value().text(speech)));
    }
  }

  private Optional<Line> table(Listing listing) {
    List<List<String>> rows = new ArrayList<>();
    for (Section row : listing.rows()) {
      List<String> heads = new ArrayList<>();
      List<String> cells = new ArrayList<>();
      for (Item item : row.items()) {
        if (item instanceof Item.Quantity quantity && !quantity.label().isEmpty()) {
          heads.add(quantity.label().strip());
          cells.add(quantity.value().text(speech));
        }
      }
      if (rows.isEmpty() && heads.stream().anyMatch(each -> !each.isEmpty())) {
        rows.add(heads);
      }
      if (!cells.isEmpty()) {
        rows.add(cells);
      }
    }
    return rows.isEmpty() ? Optional.empty() : Optional.of(new Line.Table(rows));
  }

  /** One width for all time tables, so that their columns stand below each other. */
  private int widthOfTimeLabels() {
    int width = 0;
    for (Block block : blocks) {
      width = hasWindows(block) ? Math.max(width, widthOfLabels(block.lines())) : width;
    }
    return width;
  }

  private static boolean hasWindows(Block block) {
    return block.lines().stream().anyMatch(Line.Window.class::isInstance);
  }

  private static int widthOfLabels(List<Line> lines) {
    int width = 0;
    for (Line line : lines) {
      width = Math.max(width, label(line));
    }
    return Math.min(width, WIDEST_LABEL) + GAP;
  }

  /** What needs room to the left: a label, or above the column of labels what hours count from. */
  private static int label(Line line) {
    if (line instanceof Line.Pair pair) {
      return pair.label().length();
    }
    if (line instanceof Line.Window window) {
      Timeline timeline = window.window().timeline();
      int head = timeline.clock().isPresent() ? 0 : timeline.since().length();
      return Math.max(head, window.label().length());
    }
    return 0;
  }

  private void print(Block block) {
    if (block.lines().isEmpty()) {
      return;
    }
    page.gap();
    if (!block.heading().isEmpty()) {
      page.sentence(block.heading());
    }
    int width = hasWindows(block) ? timeLabels : widthOfLabels(block.lines());
    int from = page.lines().size();
    block.lines().forEach(line -> print(line, width));
    sayTwice(from);
  }

  private void print(Line line, int width) {
    if (line instanceof Line.Text text) {
      page.sentence(text.text(), text.hanging());
    } else if (line instanceof Line.Pair pair) {
      Paragraph.lines(padded(pair.label(), width), pair.text()).forEach(page::line);
    } else if (line instanceof Line.Window window) {
      window(window.label(), window.window(), width);
    } else if (line instanceof Line.Table table) {
      page.table(table.rows());
    }
  }

  /** Hours, or clock times and behind them the hours from early to late. */
  private void window(String label, Value.Window window, int width) {
    Timeline timeline = window.timeline();
    boolean clock = timeline.clock().isPresent();
    if (!head.equals(Optional.of(timeline))) {
      head = Optional.of(timeline);
      String since = timeline.since();
      String first =
          clock ? "" : since.substring(0, 1).toUpperCase(Locale.ROOT) + since.substring(1);
      page.line(
          row(
              first,
              width,
              clock,
              speech.say("text.early"),
              speech.say("text.likely"),
              speech.say("text.late"),
              since));
    }
    page.line(
        row(
            label,
            width,
            clock,
            timeline.moment(window.hours().early()),
            timeline.moment(window.hours().likely()),
            timeline.moment(window.hours().late()),
            window.elapsed(speech)));
  }

  private static String row(
      String label,
      int width,
      boolean clock,
      String early,
      String likely,
      String late,
      String elapsed) {
    int column = clock ? CLOCK : HOURS;
    String row = padded(label, width) + padded(early, column) + padded(likely, column);
    return clock ? row + padded(late, column) + elapsed : row + late;
  }

  /** Says what A and B behind a clock time mean, once. */
  private void sayTwice(int from) {
    List<String> lines = page.lines();
    boolean found =
        !twiceSaid
            && lines.subList(from, lines.size()).stream().anyMatch(l -> TWICE.matcher(l).find());
    if (found) {
      twiceSaid = true;
      page.sentence(speech.say("text.twice"));
    }
  }

  private static String padded(String text, int width) {
    return text + " ".repeat(Math.max(1, width - text.length()));
  }
}
