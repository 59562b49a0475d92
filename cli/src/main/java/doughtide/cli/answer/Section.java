package doughtide.cli.answer;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Speech;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Supplier;

/**
 * Quantities that belong together: an object in data, a paragraph or table on a page.
 *
 * @param key of the object; if it is empty, what is inside stands in the object around it
 * @param heading above it on a page, or empty
 * @param items what is inside
 */
public record Section(String key, String heading, List<Item> items) implements Item {

  /** The key of a window or range whose fields stand among the others of the section. */
  public static final String HERE = "*";

  public Section {
    items = List.copyOf(items);
  }

  /** A section to be filled that belongs to no answer yet. */
  public static Builder loose(Timeline timeline) {
    return new Builder("", "", timeline);
  }

  /**
   * Puts a section together, one line a quantity. A quantity without label is for other programs
   * only, one without key for people only.
   */
  public static final class Builder implements ItemBuilder {
    private final String key;
    private final String heading;
    private final Timeline timeline;
    private final List<ItemBuilder> items = new ArrayList<>();

    Builder(String key, String heading, Timeline timeline) {
      this.key = key;
      this.heading = heading;
      this.timeline = timeline;
    }

    /** The language of its reader. */
    Speech speech() {
      return timeline.speech();
    }

    /** A number with the decimals usual for its unit. */
    public Builder number(String key, String label, double number, Unit unit) {
      return number(key, label, OptionalDouble.of(number), unit);
    }

    /** A number that may be missing. */
    public Builder number(String key, String label, OptionalDouble number, Unit unit) {
      return number(key, label, number, unit, unit.decimals());
    }

    /** A number with as many decimals in data as are given. */
    public Builder number(
        String key, String label, OptionalDouble number, Unit unit, int decimals) {
      return quantity(key, label, new Value.Number(number, unit, decimals));
    }

    /** A number that is uncertain. */
    public Builder range(
        String key,
        String label,
        OptionalDouble low,
        OptionalDouble likely,
        OptionalDouble high,
        Unit unit) {
      return quantity(key, label, new Value.Range(low, likely, high, unit));
    }

    /** A number that is uncertain. */
    public Builder range(
        String key, String label, double low, double likely, double high, Unit unit) {
      return range(
          key,
          label,
          OptionalDouble.of(low),
          OptionalDouble.of(likely),
          OptionalDouble.of(high),
          unit);
    }

    /** A window of time, on the timeline of this section. */
    public Builder window(String key, String label, TimeWindow hours) {
      return quantity(key, label, new Value.Window(hours, timeline));
    }

    /** An hour, on the timeline of this section. */
    public Builder moment(String key, String label, OptionalDouble hours) {
      return quantity(key, label, new Value.Moment(hours, timeline));
    }

    /** A clock time. */
    public Builder at(String key, String label, double hours, ClockTimes clock) {
      return at(key, label, OptionalDouble.of(hours), clock);
    }

    /** A clock time that may never come. */
    public Builder at(String key, String label, OptionalDouble hours, ClockTimes clock) {
      return quantity(key, label, new Value.At(hours, clock));
    }

    public Builder word(String key, String label, String text) {
      return quantity(key, label, new Value.Word(text, text));
    }

    /** A constant: words on a page, its name with dashes in data. */
    public Builder word(String key, String label, Enum<?> constant, String text) {
      return quantity(key, label, new Value.Word(text, name(constant)));
    }

    public Builder flag(String key, String label, boolean truth) {
      return quantity(key, label, new Value.Flag(truth));
    }

    public Builder quantity(String key, String label, Value value) {
      return add(new Item.Quantity(key, label, value));
    }

    /** Words for people only, beside a label. */
    public Builder say(String label, String text) {
      return word("", label, text);
    }

    /** A sentence for people only. */
    public Builder say(String text) {
      return say(text, 0);
    }

    /** A sentence for people only whose further lines are indented by some columns. */
    public Builder say(String text, int hanging) {
      return add(new Item.Sentence(text, hanging));
    }

    /** Sentences: an array in data, each behind its lead on a page. */
    public Builder texts(String key, String lead, List<String> texts) {
      return add(new Item.Texts(key, lead, texts));
    }

    /** What to be careful with. */
    public Builder cautions(List<String> cautions) {
      return texts("cautions", speech().say("page.caution") + " ", cautions);
    }

    /** What the user should know, and what to do about it. */
    public Builder warnings(List<Warning> warnings) {
      Listing.Builder all = listing("warnings", "");
      for (Warning each : warnings) {
        Advice advice = Advice.of(speech().words(), each);
        all.row()
            .word("kind", "", each.kind(), "")
            .word("text", "", Speech.plain(advice.text()))
            .word("remedy", "", Speech.plain(advice.remedy()));
        paragraph().say("! " + advice.sentences(), 2);
      }
      return this;
    }

    /** A section inside this one, to be filled: an object in data. */
    public Builder section(String key, String heading) {
      return section(key, heading, timeline);
    }

    /** A section inside this one whose hours count otherwise. */
    public Builder section(String key, String heading, Timeline own) {
      Builder section = new Builder(key, heading, own);
      items.add(section);
      return section;
    }

    /** A part of the page that stands by itself and is no object in data. */
    public Builder paragraph() {
      return section("", "");
    }

    /** A list inside this section, to be filled. */
    public Listing.Builder listing(String key, String heading) {
      Listing.Builder listing = new Listing.Builder(key, heading, timeline);
      items.add(listing);
      return listing;
    }

    /** A list for other programs only, made when it is asked for. */
    public Builder later(Supplier<Listing> listing) {
      return add(new Item.Later(listing));
    }

    /** A part made elsewhere. */
    public Builder add(Item item) {
      items.add(() -> item);
      return this;
    }

    @Override
    public Section build() {
      List<Item> built = new ArrayList<>();
      for (ItemBuilder each : items) {
        built.add(each.build());
      }
      return new Section(key, heading, built);
    }
  }

  /** A constant's name as data: lower case, with dashes. */
  public static String name(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
