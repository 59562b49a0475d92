package doughtide.cli.args;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.TestEnvironment;
import doughtide.core.document.Catalogue;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import java.util.List;
import java.util.Random;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is typed is read or refused in one line; nothing else ever happens. */
class QuantitiesPropertyTest {

  private static final int TEXTS_PER_SEED = 1000;
  private static final String LETTERS =
      "0123456789.,-+eExXCFfcghkmlbozdint%°:; \u00a0−\"'\u0660\uFFFD\u200b\n\tNaI";

  private static final List<BiConsumer<String, String>> READERS =
      List.of(
          Quantities::temperature,
          Quantities::share,
          Quantities::rise,
          Quantities::mass,
          Quantities::altitude,
          Quantities::hours,
          Quantities::feedRatio,
          TemperatureSteps::parse,
          Catalogue.standard()::flour,
          Quantities::zone,
          (name, text) ->
              ClockTimes.parse(name, text, TestEnvironment.plain().zone(), TestEnvironment.NOW),
          (name, text) -> Quantities.count(name, text, 1, 9),
          (name, text) -> Quantities.number(name, text, 0, 9));

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4})
  void isReadOrRefused(long seed) {
    read(seed, TEXTS_PER_SEED);
  }

  @Test
  @Tag("long")
  void manyAreReadOrRefused() {
    read(5, 20 * TEXTS_PER_SEED);
  }

  private static void read(long seed, int texts) {
    Random random = new Random(seed);
    for (int i = 0; i < texts; i++) {
      String text = text(random);
      BiConsumer<String, String> reader = READERS.get(i % READERS.size());
      try {
        reader.accept("--option", text);
      } catch (InputException e) {
        assertThat(e.getMessage()).as("seed %d, text '%s'", seed, text).startsWith("--option");
      } catch (RuntimeException e) {
        throw new AssertionError("seed " + seed + ", text '" + text + "'", e);
      }
    }
  }

  private static String text(Random random) {
    int length = random.nextInt(random.nextInt(20) == 0 ? 300 : 12);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < length; i++) {
      text.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    return text.toString();
  }
}
