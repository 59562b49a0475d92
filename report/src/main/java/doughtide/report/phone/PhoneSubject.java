package doughtide.report.phone;

import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.learning.JarError;
import doughtide.core.learning.Reading;
import doughtide.report.chart.ChartCaption;
import doughtide.report.chart.PrintedChart;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** What an article of a page is about. Its hours count from mixing or from feeding. */
interface PhoneSubject {

  /** As printed; anything, it stays text. */
  String name();

  /** Hour 0; its zone is the one of all times. */
  ZonedDateTime zero();

  /** Before any reading. */
  RiseForecast forecast();

  /** How its jar misreads. */
  JarError jar();

  /** Of how many members everything is known. */
  int members();

  /** Whether the day of hour 0 is named, too, as for a plan of days to come. */
  boolean namesEveryDay();

  /** What was read before the page was made, ascending. */
  List<Reading> readings();

  /** What happens to each member. */
  List<PhoneEvent> events();

  /** The key of the event that the page answers for. */
  String asked();

  /** The rise that is answered for; nothing where it is another event. */
  OptionalDouble risePercent();

  /** The key of the event that ends the time answered for; empty where it has no end. */
  String until();

  /** The answer in one sentence or two. */
  String sentence(PhoneClock clock);

  /** When the answer comes true, as the program says it. */
  Distribution when();

  /** When the answer was likely before any reading. */
  OptionalDouble expectedHours();

  /** When to look next: an hour, {@code now}, or empty where the page finds it. */
  String look();

  Chart chart();

  /** What is done when, in order. */
  List<Step> steps(PhoneClock clock);

  /** At which hour and height of the jar to do what, a sentence an hour; may be none. */
  List<String> rule(PhoneClock clock);

  /** Why the window is wide, a sentence each. */
  List<String> why();

  List<String> cautions();

  /** What it is made of. */
  String formula();

  /** When hour 0 was, in words. */
  String begun();

  /** The texts of the page that name the subject. */
  PhoneWords say();

  /** The readings of its height. */
  default Stream<Reading> heights() {
    return readings().stream().filter(each -> each.rise().isPresent());
  }

  /**
   * Its chart, without a head.
   *
   * @param drawn for any size
   * @param caption for who does not see it
   * @param isInTimes whether its upright axis is in times the first height, and not in per cent
   */
  record Chart(PrintedChart drawn, ChartCaption caption, boolean isInTimes) {}

  /**
   * A step of the day.
   *
   * @param name what to do
   * @param hours its likely hour, negative before hour 0
   * @param event the key of the event with which it moves, {@code after} if it moves with the
   *     answer, {@code ready} for the middle of the time answered for, or empty
   * @param time as printed
   * @param detail what it needs; may be empty
   */
  record Step(String name, double hours, String event, String time, String detail) {}
}
