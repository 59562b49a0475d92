package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

/** A JSON answer by paths such as {@code ripe.hoursEarly} and {@code warnings.0.kind}. */
public record JsonAnswer(Map<String, String> values) {

  public static JsonAnswer of(CliRun run) {
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    Map<String, String> values = new HashMap<>();
    try (JsonParser parser = new JsonFactory().createParser(run.out())) {
      parser.nextToken();
      read(parser, "", values);
      assertThat(parser.nextToken()).isNull();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new JsonAnswer(values);
  }

  private static void read(JsonParser parser, String path, Map<String, String> values)
      throws IOException {
    if (!parser.currentToken().isStructStart()) {
      values.put(path, parser.getText());
      return;
    }
    boolean array = parser.currentToken() == JsonToken.START_ARRAY;
    String before = path.isEmpty() ? "" : path + ".";
    int count = 0;
    for (JsonToken t = parser.nextToken(); !t.isStructEnd(); t = parser.nextToken()) {
      String name = array ? Integer.toString(count) : parser.currentName();
      if (!array) {
        parser.nextToken();
      }
      read(parser, before + name, values);
      count++;
    }
    values.put(before + "size", Integer.toString(count));
  }

  public String text(String path) {
    assertThat(values).containsKey(path);
    return values.get(path);
  }

  /** All that stands under a path, to compare. */
  public Map<String, String> under(String path) {
    Map<String, String> part = new TreeMap<>(values);
    part.keySet().removeIf(each -> !each.startsWith(path + "."));
    return part;
  }

  public double number(String path) {
    return Double.parseDouble(text(path));
  }
}
