package doughtide.cli.session;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Shorten;
import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The time zone that the environment names. Java takes a setting it does not know for UTC, and a
 * POSIX rule with a summer time for one without, and says neither.
 */
final class ZoneSetting {

  static final String VARIABLE = "TZ";

  private static final Pattern UTC =
      Pattern.compile(":?(Etc/)?(UTC|GMT|UCT|Zulu|Universal|Greenwich|GMT[+-]?0)");

  /** POSIX: an abbreviation and how far it is west of Greenwich, without a summer time. */
  private static final Pattern ALWAYS_THE_SAME =
      Pattern.compile("(<[A-Za-z0-9+-]+>|[A-Za-z]{3,})[+-]?[0-9]{1,2}(:[0-9]{2}){0,2}");

  private ZoneSetting() {}

  /**
   * The zone that Java made of the setting.
   *
   * @throws InputException if Java did not understand it
   */
  static ZoneId checked(ZoneId java, Optional<String> setting) {
    boolean fixed = java.getRules().isFixedOffset();
    if (fixed && setting.filter(text -> !isFixed(text)).isPresent()) {
      throw new InputException(
          "TZ='"
              + Shorten.to(setting.orElseThrow(), 60)
              + "' in the environment names no time zone that this program knows: set for example"
              + " TZ=Europe/London, or add --zone Europe/London");
    }
    return java;
  }

  /** Whether it names a zone whose clocks never change. */
  private static boolean isFixed(String text) {
    if (UTC.matcher(text).matches() || ALWAYS_THE_SAME.matcher(text).matches()) {
      return true;
    }
    String name = text.replaceFirst("^:?(/.*/zoneinfo/)?", "");
    return ZoneId.getAvailableZoneIds().contains(name);
  }
}
