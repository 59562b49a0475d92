package doughtide.cli.batch;

import java.util.List;
import java.util.Map;

/** Reads the values of one line. */
interface BatchLineReader {

  /**
   * The values by option name, {@link BatchColumns#ID} among them if given; empty values are left
   * out.
   *
   * @throws doughtide.core.quantity.InputException if the line cannot be read
   */
  Map<String, List<String>> values(String line);
}
