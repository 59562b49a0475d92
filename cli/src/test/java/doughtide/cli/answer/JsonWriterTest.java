package doughtide.cli.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JsonWriterTest {

  @Test
  void theOrderIsTheOrderOfTheCalls() {
    StringBuilder out = new StringBuilder();
    write(new JsonWriter(out));
    assertThat(out.toString())
        .isEqualTo(
            """
            {
              "schema": "doughtide/rise/1",
              "rises": [
                {"percent": 50, "hoursLikely": 4.21},
                {"percent": 100, "hoursLikely": null}
              ],
              "warnings": [],
              "sure": false
            }
            """);
  }

  @Test
  void oneLineIsOneLine() {
    StringBuilder out = new StringBuilder();
    write(JsonWriter.oneLine(out));
    assertThat(out.toString())
        .isEqualTo(
            "{\"schema\":\"doughtide/rise/1\",\"rises\":[{\"percent\":50,\"hoursLikely\":4.21},"
                + "{\"percent\":100,\"hoursLikely\":null}],\"warnings\":[],\"sure\":false}\n");
  }

  private static void write(JsonWriter json) {
    json.beginObject().field("schema", "doughtide/rise/1").name("rises").beginArray();
    json.beginObject().field("percent", 50).field("hoursLikely", 4.2071, 2).endObject();
    json.beginObject()
        .field("percent", 100)
        .field("hoursLikely", OptionalDouble.empty(), 2)
        .endObject();
    json.endArray().name("warnings").beginArray().endArray().field("sure", false).endObject();
  }

  @Test
  void numbersAreRoundedAndNeverNaN() {
    assertThat(JsonWriter.number(Double.NaN, 2)).isEqualTo("null");
    assertThat(JsonWriter.number(Double.NEGATIVE_INFINITY, 2)).isEqualTo("null");
    assertThat(JsonWriter.number(-0.001, 2)).isEqualTo("0");
    assertThat(JsonWriter.number(1200, 2)).isEqualTo("1200");
    assertThat(JsonWriter.number(1e21, 0)).isEqualTo("1000000000000000000000");
    assertThat(JsonWriter.number(2.675, 2)).isEqualTo("2.68");
  }

  @Test
  void anObjectIsClosedByItsOwnBrace() {
    JsonWriter json = new JsonWriter(new StringBuilder()).beginObject();
    assertThatThrownBy(json::endArray).isInstanceOf(IllegalStateException.class);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void anyTextComesBackThroughAnotherParser(long seed) throws IOException {
    Random random = new Random(seed);
    for (int i = 0; i < 200; i++) {
      StringBuilder text = new StringBuilder();
      random.ints(20, 0, 0x3000).forEach(c -> text.append((char) c));
      StringBuilder out = new StringBuilder();
      JsonWriter.oneLine(out).beginArray().value(text.toString()).endArray();
      try (JsonParser parser = new JsonFactory().createParser(out.toString())) {
        assertThat(parser.nextToken()).isEqualTo(JsonToken.START_ARRAY);
        assertThat(parser.nextTextValue())
            .as("seed %d, text %d", seed, i)
            .isEqualTo(text.toString());
      }
    }
  }

  @Test
  void halfACharacterIsEscaped() {
    StringBuilder out = new StringBuilder();
    JsonWriter.oneLine(out).beginArray().value("a\ud83dz\udca8").value("\ud83d\udca8").endArray();
    assertThat(out.toString()).isEqualTo("[\"a\\ud83dz\\udca8\",\"\ud83d\udca8\"]\n");
  }
}
