package doughtide.report.phone;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A file of the program with places such as {@code {{title}}} to be filled.
 *
 * @param text as it stands in the file
 */
record Template(String text) {

  private static final Pattern PLACE = Pattern.compile("\\{\\{([A-Za-z]+)}}");

  /**
   * The file.
   *
   * @param name its name beside this package's resources
   */
  static Template of(String name) {
    try (InputStream in = Template.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the file " + name + " is missing from the program");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return new Template(text.replace("\r\n", "\n").stripTrailing());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Fills every place; what is put in is not read again.
   *
   * @throws IllegalArgumentException if a place has no value
   */
  Markup fill(Map<String, Markup> values) {
    Matcher place = PLACE.matcher(text);
    StringBuilder filled = new StringBuilder();
    int at = 0;
    while (place.find()) {
      Markup value = values.get(place.group(1));
      if (value == null) {
        throw new IllegalArgumentException("no value for the place " + place.group(1));
      }
      filled.append(text, at, place.start()).append(value.html());
      at = place.end();
    }
    return new Markup(filled.append(text.substring(at)).toString());
  }
}
