package doughtide.core.learning;

import doughtide.core.dough.DoughFormula;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** A fingerprint of the bakes that something was learned from; their order does not matter. */
final class ReadingsDigest {
  private ReadingsDigest() {}

  static String sha256(List<Bake> bakes) {
    List<String> each = bakes.stream().map(ReadingsDigest::text).sorted().toList();
    return hex(String.join("\n", each));
  }

  private static String hex(String text) {
    try {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      return HexFormat.of().formatHex(digest.digest(text.getBytes(StandardCharsets.UTF_8)));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform must have SHA-256", e);
    }
  }

  private static String text(Bake bake) {
    DoughFormula formula = bake.formula();
    StringBuilder text = new StringBuilder(bake.name()).append(bake.occasion()).append('\n');
    text.append(formula.flour()).append(formula.starter());
    text.append(number(formula.prefermentedFlour())).append(number(formula.hydration().fraction()));
    text.append(number(formula.salt().fraction())).append(number(formula.altitude().metres()));
    for (double hours = 0; hours <= bake.lastHours(); hours += 1) {
      text.append(number(bake.temperature().lowestCelsius(Math.max(hours, 0.001))));
    }
    for (Reading reading : bake.readings()) {
      text.append('\n').append(number(reading.hours()));
      text.append(reading.rise().map(rise -> number(rise.fraction())).orElse(" -"));
      text.append(number(reading.celsius())).append(number(reading.ph()));
    }
    return text.toString();
  }

  private static String number(OptionalDouble value) {
    return value.isPresent() ? number(value.getAsDouble()) : " -";
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, " %.9g", value);
  }
}
