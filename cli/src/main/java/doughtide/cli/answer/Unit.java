package doughtide.cli.answer;

import doughtide.cli.args.Words;

/**
 * What a number counts: its ending in the key, its decimals in data and its words on a page. A new
 * unit is one line here and one case in {@link #text}.
 */
public enum Unit {
  HOURS("Hours", 4),
  MINUTES("Minutes", 2),
  PERCENT("Percent", 2),
  /** A temperature. */
  CELSIUS("Celsius", 4),
  /** A difference of temperatures. */
  KELVIN("Kelvin", 4),
  GRAMS("Grams", 2),
  METRES("Metres", 1),
  /** A part of one, 0…1. */
  SHARE("Share", 3),
  /** How many times as high, as heavy and so on. */
  TIMES("Times", 3),
  PH("", 2),
  COUNT("", 0),
  /** None; the key or the label says what is counted. */
  NONE("", 4);

  private final String ending;
  private final int decimals;

  Unit(String ending, int decimals) {
    this.ending = ending;
    this.decimals = decimals;
  }

  /** What a key that holds such a number ends in; empty if the key says it otherwise. */
  String ending() {
    return ending;
  }

  /** Decimals in data. */
  int decimals() {
    return decimals;
  }

  /** The number with its unit, as exact as a page needs it. */
  public String text(double number) {
    return switch (this) {
      case HOURS -> Words.about(number);
      case MINUTES -> Words.rounded(number, 0) + " min";
      case PERCENT -> Words.percent(number);
      case CELSIUS ->
          Words.rounded(number, 1) + " °C (" + Words.rounded(number * 1.8 + 32, 0) + " °F)";
      case KELVIN -> Words.rounded(number, 1) + " °C (" + Words.rounded(number * 1.8, 1) + " °F)";
      case GRAMS -> Words.grams(number);
      case METRES -> Words.rounded(number, 0) + " m";
      case SHARE -> Words.rounded(100 * number, 0) + " %";
      case TIMES -> Words.rounded(number, 1) + " times";
      case PH, NONE -> Words.rounded(number, 2);
      case COUNT -> Words.rounded(number, 0);
    };
  }
}
