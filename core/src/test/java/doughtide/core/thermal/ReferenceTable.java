package doughtide.core.thermal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Rows of a comma-separated file of reference data, comment lines left out, fields by column name.
 */
final class ReferenceTable {
  private ReferenceTable() {}

  static List<Map<String, String>> rows(String file) {
    Path path = Path.of(System.getProperty("doughtide.testdata"), file);
    try {
      List<String> lines =
          Files.readAllLines(path).stream()
              .filter(line -> !line.startsWith("#") && !line.isBlank())
              .toList();
      String[] names = lines.get(0).split(",", -1);
      return lines.stream().skip(1).map(line -> row(names, line.split(",", -1))).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<String, String> row(String[] names, String[] fields) {
    Map<String, String> row = new LinkedHashMap<>();
    for (int i = 0; i < names.length; i++) {
      row.put(names[i].strip(), i < fields.length ? fields[i].strip() : "");
    }
    return row;
  }

  static double number(Map<String, String> row, String column) {
    return Double.parseDouble(row.get(column));
  }
}
