package doughtide.cli.batch;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads lines that each hold one flat JSON object. */
final class BatchJsonLine implements BatchLineReader {

  private static final String EXAMPLE = "{\"id\":\"A\",\"dough_temp\":\"25C\"}";
  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

  private final BatchColumns columns;

  public BatchJsonLine(BatchColumns columns) {
    this.columns = columns;
  }

  @Override
  public Map<String, List<String>> values(String line) {
    try (JsonParser parser = FACTORY.createParser(line)) {
      Map<String, List<String>> values = new LinkedHashMap<>();
      require(parser.nextToken() == JsonToken.START_OBJECT);
      while (parser.nextToken() == JsonToken.FIELD_NAME) {
        add(parser, values);
      }
      require(parser.currentToken() == JsonToken.END_OBJECT && parser.nextToken() == null);
      return values;
    } catch (JsonProcessingException e) {
      throw new InputException(
          "this is no JSON (" + e.getOriginalMessage() + "): write for example " + EXAMPLE);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void add(JsonParser parser, Map<String, List<String>> values) throws IOException {
    String option = columns.option(parser.currentName());
    JsonToken token = parser.nextToken();
    require(token != null && token.isScalarValue());
    String text = token == JsonToken.VALUE_NULL ? "" : parser.getText();
    if (!text.isBlank() && values.put(option, List.of(text)) != null) {
      throw new InputException("'" + option + "' stands there twice: leave one out");
    }
  }

  private static void require(boolean flat) {
    if (!flat) {
      throw new InputException(
          "each line must hold one flat JSON object: write for example " + EXAMPLE);
    }
  }
}
