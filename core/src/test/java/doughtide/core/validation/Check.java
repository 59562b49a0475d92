package doughtide.core.validation;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One published check, a line of a file in testdata. */
record Check(
    String check,
    String name,
    Map<String, String> inputs,
    String quantity,
    String test,
    double low,
    double high,
    String unit,
    String expectedOutcome,
    String measured,
    String source) {

  static List<Check> read(String file) {
    Path folder = Path.of(System.getProperty("doughtide.testdata"));
    try {
      return Files.readAllLines(folder.resolve(file)).stream()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(Check::of)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Check of(String line) {
    String[] f = line.split(",", -1);
    if (f.length != 11) {
      throw new AssertionError("eleven fields are needed: " + line);
    }
    return new Check(
        f[0],
        f[1],
        inputs(f[2]),
        f[3],
        f[4],
        Double.parseDouble(f[5]),
        Double.parseDouble(f[6]),
        f[7],
        f[8],
        f[9],
        f[10]);
  }

  private static Map<String, String> inputs(String field) {
    Map<String, String> inputs = new LinkedHashMap<>();
    for (String input : field.split(" ")) {
      if (!input.isEmpty()) {
        int at = input.indexOf('=');
        inputs.put(input.substring(0, at), input.substring(at + 1));
      }
    }
    return inputs;
  }

  boolean has(String key) {
    return inputs.containsKey(key);
  }

  String text(String key) {
    String value = inputs.get(key);
    if (value == null) {
      throw new AssertionError(this + " lacks the input " + key);
    }
    return value;
  }

  double number(String key) {
    return Double.parseDouble(text(key));
  }

  double number(String key, double otherwise) {
    return has(key) ? number(key) : otherwise;
  }

  @Override
  public String toString() {
    return check + " " + name + " (" + source + ")";
  }
}
