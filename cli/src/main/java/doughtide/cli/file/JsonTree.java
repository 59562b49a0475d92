package doughtide.cli.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import doughtide.core.quantity.InputException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A JSON document that is small enough to hold, with a way to each value that says in one line what
 * is missing.
 */
public final class JsonTree {

  private static final int DEEPEST = 20;
  private static final JsonFactory FACTORY = new JsonFactory();

  private final String shown;
  private final String place;
  private final Object value;

  private JsonTree(String shown, String place, Object value) {
    this.shown = shown;
    this.place = place;
    this.value = value;
  }

  /**
   * Reads a document.
   *
   * @param shown the name for messages
   * @param in is left open
   * @throws InputException if it is no JSON
   */
  public static JsonTree read(String shown, InputStream in) throws IOException {
    try (JsonParser parser = FACTORY.createParser(in)) {
      if (parser.nextToken() == null) {
        throw new InputException(
            FileProblem.quoted(shown) + " is no JSON, it is empty: is this the right file?");
      }
      Object root = value(shown, parser, 0);
      if (parser.nextToken() != null) {
        throw new InputException(
            FileProblem.quoted(shown) + " goes on after its end: make it anew");
      }
      return new JsonTree(shown, "", root);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 1 : e.getLocation().getLineNr();
      throw new InputException(
          FileProblem.quoted(shown) + " line " + line + " is no JSON: is this the right file?");
    }
  }

  private static Object value(String shown, JsonParser parser, int depth) throws IOException {
    JsonToken token = parser.currentToken();
    if (token == null || depth > DEEPEST) {
      throw new InputException(FileProblem.quoted(shown) + " is no JSON this program can read");
    }
    return switch (token) {
      case START_OBJECT -> object(shown, parser, depth);
      case START_ARRAY -> array(shown, parser, depth);
      case VALUE_STRING -> parser.getText();
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      default -> "";
    };
  }

  private static Map<String, Object> object(String shown, JsonParser parser, int depth)
      throws IOException {
    Map<String, Object> object = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = parser.currentName();
      parser.nextToken();
      object.put(name, value(shown, parser, depth + 1));
    }
    return object;
  }

  private static List<Object> array(String shown, JsonParser parser, int depth) throws IOException {
    List<Object> array = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      array.add(value(shown, parser, depth + 1));
    }
    return array;
  }

  /** Whether an object has a value of this name. */
  public boolean has(String name) {
    return value instanceof Map<?, ?> map && map.containsKey(name);
  }

  /** A value of an object. */
  public JsonTree at(String name) {
    Object found = value instanceof Map<?, ?> map ? map.get(name) : null;
    String where = place.isEmpty() ? name : place + "." + name;
    if (found == null) {
      throw new InputException(
          FileProblem.quoted(shown) + " has no '" + where + "': learn the starter again");
    }
    return new JsonTree(shown, where, found);
  }

  /** The elements of an array. */
  public List<JsonTree> elements() {
    if (!(value instanceof List<?> list)) {
      throw wrong("a list");
    }
    List<JsonTree> elements = new ArrayList<>();
    for (Object each : list) {
      elements.add(new JsonTree(shown, place + "[" + elements.size() + "]", each));
    }
    return elements;
  }

  /** The names of an object in order. */
  public List<String> names() {
    if (!(value instanceof Map<?, ?> map)) {
      throw wrong("an object");
    }
    return map.keySet().stream().map(String::valueOf).toList();
  }

  public String text() {
    if (!(value instanceof String text)) {
      throw wrong("a text");
    }
    return text;
  }

  public boolean truth() {
    if (!(value instanceof Boolean truth)) {
      throw wrong("true or false");
    }
    return truth;
  }

  public double number() {
    if (!(value instanceof Double number)) {
      throw wrong("a number");
    }
    return number;
  }

  public double[] numbers() {
    return elements().stream().mapToDouble(JsonTree::number).toArray();
  }

  private InputException wrong(String wanted) {
    return new InputException(
        FileProblem.quoted(shown) + ": '" + place + "' must be " + wanted + ": learn it again");
  }
}
