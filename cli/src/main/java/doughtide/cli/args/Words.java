package doughtide.cli.args;

import doughtide.core.dough.Ingredients;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;

/** Quantities as the pages print them. */
public final class Words {

  private Words() {}

  /** Both scales, to a tenth of a degree Celsius and a whole degree Fahrenheit. */
  public static String temperature(Temperature temperature) {
    return rounded(temperature.celsius(), 1)
        + " °C ("
        + rounded(temperature.fahrenheit(), 0)
        + " °F)";
  }

  /** To a tenth of a per cent. */
  public static String percent(Share share) {
    return percent(share.percent());
  }

  /** To a tenth of a per cent. */
  public static String percent(double percent) {
    return rounded(percent, 1) + " %";
  }

  public static String altitude(Altitude altitude) {
    return altitude.metres() == 0
        ? "sea level"
        : rounded(altitude.metres(), 0) + " m above the sea";
  }

  /** Grams, to a tenth below ten. */
  public static String grams(double grams) {
    return rounded(grams, grams < 10 ? 1 : 0) + " g";
  }

  /**
   * Hours and minutes, to a minute: {@code 3 h 5 min}, {@code 3 h} or {@code 45 min}, which nobody
   * takes for a clock time.
   */
  public static String duration(double hours) {
    long minutes = Math.round(hours * 60);
    long whole = minutes / 60;
    long rest = minutes % 60;
    if (rest == 0) {
      return minutes == 0 ? "0 min" : whole + " h";
    }
    return (whole == 0 ? "" : whole + " h ") + rest + " min";
  }

  /** Hours and minutes to five minutes, as exact as a forecast can be: {@code 3 h 5 min}. */
  public static String about(double hours) {
    return duration(Math.round(hours * 12) / 12.0);
  }

  /** A number with at most this many decimals, a decimal point in every locale. */
  public static String rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Checks.plain(Math.round(value * scale) / scale);
  }

  /** A number of things: {@code 1 reading}, {@code 2 readings}. */
  public static String counted(long count, String thing) {
    return count + " " + thing + (count == 1 ? "" : "s");
  }

  /** What to weigh, as a sentence. */
  public static String weigh(Ingredients weigh) {
    return "Weigh: flour "
        + grams(weigh.flourGrams())
        + ", water "
        + grams(weigh.waterGrams())
        + ", starter "
        + grams(weigh.starterGrams())
        + ", salt "
        + grams(weigh.saltGrams())
        + additions(weigh)
        + ".";
  }

  /** What is kneaded in, each behind a comma. */
  public static String additions(Ingredients weigh) {
    StringBuilder words = new StringBuilder();
    for (Ingredients.Addition each : weigh.additions()) {
      words.append(", ").append(each.name()).append(' ').append(grams(each.grams()));
      if (each.soakGrams() > 0) {
        words.append(" with ").append(grams(each.soakGrams())).append(" water");
      }
    }
    return words.toString();
  }
}
