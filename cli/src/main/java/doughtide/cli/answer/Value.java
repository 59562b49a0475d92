package doughtide.cli.answer;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.Speech;
import doughtide.cli.args.Words;
import doughtide.core.forecast.TimeWindow;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** What a quantity is, as words for a page and as fields for data. */
public sealed interface Value {

  /** Stands on a page where there is no value. */
  String NONE = "–";

  /** For a page in the language of its reader; a clock is in its own. */
  String text(Speech speech);

  /** For an English page. */
  default String text() {
    return text(Speech.ENGLISH);
  }

  /** A number of something that there may be; empty where there is none. */
  static <T> OptionalDouble of(Optional<T> from, ToDoubleFunction<T> number) {
    return from.isPresent()
        ? OptionalDouble.of(number.applyAsDouble(from.get()))
        : OptionalDouble.empty();
  }

  /**
   * For data.
   *
   * @param key of the quantity; {@link Section#HERE} for fields without one
   * @param to takes the fields
   */
  void fields(String key, Fields to);

  /**
   * Words.
   *
   * @param text for a page
   * @param data for other programs; a constant's name does not change with the language
   */
  record Word(String text, String data) implements Value {
    @Override
    public String text(Speech speech) {
      return text;
    }

    @Override
    public void fields(String key, Fields to) {
      to.text(key, data);
    }
  }

  /** Yes or no. */
  record Flag(boolean truth) implements Value {
    @Override
    public String text(Speech speech) {
      return speech.say(truth ? "text.yes" : "text.no");
    }

    @Override
    public void fields(String key, Fields to) {
      to.flag(key, truth);
    }
  }

  /**
   * One number.
   *
   * @param number empty for none
   * @param unit what it counts
   * @param decimals in data
   */
  record Number(OptionalDouble number, Unit unit, int decimals) implements Value {
    @Override
    public String text(Speech speech) {
      return words(number, unit, speech);
    }

    @Override
    public void fields(String key, Fields to) {
      to.number(key, number, decimals);
    }
  }

  /**
   * A number that is uncertain: fields {@code xLowPercent}, {@code xLikelyPercent}, {@code
   * xHighPercent} for the key {@code xPercent}.
   *
   * @param low one in ten lies below
   * @param likely half lie below
   * @param high one in ten lies above
   */
  record Range(OptionalDouble low, OptionalDouble likely, OptionalDouble high, Unit unit)
      implements Value {
    private static final double WIDE_POINTS = 4;

    /**
     * The likely number, and behind it from where to where: {@code 34 % (28 % to 41 %)}; where the
     * range is wide, tenths of a per cent say nothing.
     */
    @Override
    public String text(Speech speech) {
      boolean known = low.isPresent() && high.isPresent() && likely.isPresent();
      if (!known) {
        return words(likely, unit, speech);
      }
      boolean wide = unit == Unit.PERCENT && high.getAsDouble() - low.getAsDouble() >= WIDE_POINTS;
      String from = wide ? whole(low) : words(low, unit, speech);
      String one = wide ? whole(likely) : words(likely, unit, speech);
      String to = wide ? whole(high) : words(high, unit, speech);
      return from.equals(to) ? one : one + " (" + fromTo(from, to, speech) + ")";
    }

    private static String whole(OptionalDouble percent) {
      return Unit.PERCENT.text(Math.rint(percent.orElseThrow()));
    }

    @Override
    public void fields(String key, Fields to) {
      to.number(name(key, "Low"), low, unit.decimals());
      to.number(name(key, "Likely"), likely, unit.decimals());
      to.number(name(key, "High"), high, unit.decimals());
    }

    private String name(String key, String part) {
      String ending = unit.ending();
      String own = key.equals(Section.HERE) ? "" : key;
      if (own.toLowerCase(Locale.ROOT).endsWith(ending.toLowerCase(Locale.ROOT))) {
        own = own.substring(0, own.length() - ending.length());
      }
      return own.isEmpty() ? part.toLowerCase(Locale.ROOT) + ending : own + part + ending;
    }
  }

  /**
   * A clock time alone.
   *
   * @param hours on the clock's axis; empty for never
   */
  record At(OptionalDouble hours, ClockTimes clock) implements Value {
    @Override
    public String text(Speech speech) {
      return hours.isPresent() ? clock.at(hours.getAsDouble()) : NONE;
    }

    @Override
    public void fields(String key, Fields to) {
      iso(key, hours, clock, to);
    }
  }

  /**
   * An hour: fields {@code xHours} and, where a clock is known, {@code xClock} for the key {@code
   * x}; {@code hours} and {@code clock} for the key {@code hours}.
   *
   * @param hours empty for never
   */
  record Moment(OptionalDouble hours, Timeline timeline) implements Value {
    @Override
    public String text(Speech speech) {
      if (hours.isEmpty()) {
        return NONE;
      }
      double at = hours.getAsDouble();
      String elapsed = Words.about(at - timeline.shownFromHours());
      Optional<ClockTimes> clock = timeline.clock();
      return clock.isPresent()
          ? clock.get().about(at) + ", " + elapsed + " " + timeline.since()
          : elapsed + " " + timeline.since();
    }

    @Override
    public void fields(String key, Fields to) {
      boolean plain = key.equals("hours");
      to.number(plain ? key : key + "Hours", hours, Unit.HOURS.decimals());
      if (timeline.clock().isPresent()) {
        iso(plain ? "clock" : key + "Clock", hours, timeline.clock().get(), to);
      }
    }
  }

  /**
   * A window of time: an object with {@code hoursEarly}, {@code hoursLikely}, {@code hoursLate},
   * {@code reachedShare} and, where a clock is known, {@code clockEarly} and so on.
   *
   * @param hours the window
   */
  record Window(TimeWindow hours, Timeline timeline) implements Value {
    /** Likely first: {@code 4 h 45 min (3 h 55 min to 5 h 45 min) after mixing}. */
    @Override
    public String text(Speech speech) {
      if (hours.likely().isEmpty()) {
        return speech.say("text.never");
      }
      String range = range(speech);
      return timeline.moment(hours.likely())
          + (range.isEmpty() ? "" : " (" + range + ")")
          + (timeline.clock().isEmpty() ? " " + timeline.since() : "");
    }

    private String range(Speech speech) {
      if (hours.early().isEmpty()) {
        return "";
      }
      return hours.late().isEmpty()
          ? open(timeline.moment(hours.early()), speech)
          : fromTo(timeline.moment(hours.early()), timeline.moment(hours.late()), speech);
    }

    /** From early to late in hours. */
    String elapsed(Speech speech) {
      if (hours.early().isEmpty()) {
        return NONE;
      }
      double from = timeline.shownFromHours();
      String early = Words.about(hours.early().getAsDouble() - from);
      return hours.late().isPresent()
          ? early + " – " + Words.about(hours.late().getAsDouble() - from)
          : open(early, speech);
    }

    @Override
    public void fields(String key, Fields to) {
      int decimals = Unit.HOURS.decimals();
      to.number("hoursEarly", hours.early(), decimals);
      to.number("hoursLikely", hours.likely(), decimals);
      to.number("hoursLate", hours.late(), decimals);
      to.number("reachedShare", OptionalDouble.of(hours.reachedShare()), Unit.SHARE.decimals());
      if (timeline.clock().isPresent()) {
        ClockTimes clock = timeline.clock().get();
        iso("clockEarly", hours.early(), clock, to);
        iso("clockLikely", hours.likely(), clock, to);
        iso("clockLate", hours.late(), clock, to);
      }
    }
  }

  private static String words(OptionalDouble number, Unit unit, Speech speech) {
    return number.isPresent() ? speech.marked(unit.text(number.getAsDouble())) : NONE;
  }

  private static String fromTo(String from, String to, Speech speech) {
    return speech.say("text.fromTo", Map.of("from", from, "to", to));
  }

  private static String open(String from, Speech speech) {
    return speech.say("hours.from", Map.of("hours", from));
  }

  private static void iso(String name, OptionalDouble hours, ClockTimes clock, Fields to) {
    if (hours.isPresent()) {
      to.text(name, clock.iso(hours.getAsDouble()));
    } else {
      to.nothing(name);
    }
  }
}
