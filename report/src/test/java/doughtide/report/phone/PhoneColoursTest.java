package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.report.SimulatedSight;
import java.awt.Color;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The page's colours in the light, in the dark and in print, as those see them who lack a cone. */
class PhoneColoursTest {
  private static final double OF_TEXT = 4.5; // WCAG 2.2, 1.4.3
  private static final double OF_MARKS = 3; // WCAG 2.2, 1.4.11

  private static final Pattern COLOURS = Pattern.compile(":root \\{([^}]*)}");
  private static final Pattern COLOUR = Pattern.compile("--([a-z-]+): #([0-9a-f]{3,6});");

  /** The three sets; what a later one leaves out stays as in the light. */
  private static List<Map<String, Color>> sets() throws IOException {
    try (InputStream in = PhonePage.class.getResourceAsStream("page.css")) {
      String css = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      List<Map<String, Color>> sets = new ArrayList<>();
      for (MatchResult set : COLOURS.matcher(css).results().toList()) {
        Map<String, Color> colours = new HashMap<>(sets.isEmpty() ? Map.of() : sets.get(0));
        Matcher each = COLOUR.matcher(set.group(1));
        while (each.find()) {
          colours.put(each.group(1), colour(each.group(2)));
        }
        sets.add(colours);
      }
      return sets;
    }
  }

  private static Color colour(String digits) {
    String six = digits.length() == 3 ? digits.replaceAll(".", "$0$0") : digits;
    return new Color(Integer.parseInt(six, 16));
  }

  @ParameterizedTest
  @EnumSource
  void textAndMarksStandOutForEverybody(SimulatedSight sight) throws IOException {
    List<Map<String, Color>> sets = sets();
    assertThat(sets).hasSize(3);
    for (Map<String, Color> set : sets) {
      for (String ground : List.of("paper", "raised")) {
        for (String text : List.of("ink", "soft", "mark")) {
          assertContrast(sight, set, text, ground, OF_TEXT);
        }
        assertContrast(sight, set, "line", ground, OF_MARKS);
        assertContrast(sight, set, "focus", ground, OF_MARKS);
      }
      assertContrast(sight, set, "mark-ink", "mark", OF_TEXT);
      assertContrast(sight, set, "ink", "band", OF_TEXT);
      assertContrast(sight, set, "mark", "band", OF_MARKS);
      assertContrast(sight, set, "focus", "band", OF_MARKS);
    }
  }

  private static void assertContrast(
      SimulatedSight sight, Map<String, Color> set, String one, String other, double least) {
    assertThat(sight.contrast(set.get(one), set.get(other)))
        .as("%s: %s on %s of %s", sight, one, other, set)
        .isGreaterThanOrEqualTo(least);
  }
}
