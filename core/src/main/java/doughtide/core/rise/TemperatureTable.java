package doughtide.core.rise;

/**
 * What depends on temperature alone, tabulated for runs in which the temperature changes all the
 * time: cubic through four neighbours on a quarter-degree grid. Immutable, shared by the members of
 * an ensemble that have the same rate curves.
 */
final class TemperatureTable {
  static final int YEAST = 0;
  static final int BACTERIA = 1;
  static final int RESTING = 2;
  static final int PROTEASE = 3;
  static final int LITRES_PER_MOL = 4;
  static final int CAPACITY = 5;
  static final int COLUMNS = 6;

  private static final double LOWEST_CELSIUS = -15;
  private static final double HIGHEST_CELSIUS = 60;
  private static final double STEP_CELSIUS = 0.25;
  private static final int ROWS = (int) ((HIGHEST_CELSIUS - LOWEST_CELSIUS) / STEP_CELSIUS) + 1;

  private final double[] values = new double[ROWS * COLUMNS];

  /** Fills one row with what holds at a temperature. */
  interface Source {
    void at(double celsius, double[] row);
  }

  TemperatureTable(Source source) {
    double[] row = new double[COLUMNS];
    for (int i = 0; i < ROWS; i++) {
      source.at(LOWEST_CELSIUS + i * STEP_CELSIUS, row);
      System.arraycopy(row, 0, values, i * COLUMNS, COLUMNS);
    }
  }

  /** Interpolates one row; the ends hold outside −15…60 °C. */
  void at(double celsius, double[] row) {
    double place = (celsius - LOWEST_CELSIUS) / STEP_CELSIUS;
    int low = Math.min(Math.max((int) place, 1), ROWS - 3);
    double x = Math.min(Math.max(place - low, -1), 2);
    double before = -x * (x - 1) * (x - 2) / 6;
    double here = (x + 1) * (x - 1) * (x - 2) / 2;
    double next = -x * (x + 1) * (x - 2) / 2;
    double after = x * (x + 1) * (x - 1) / 6;
    int base = (low - 1) * COLUMNS;
    for (int c = 0; c < COLUMNS; c++) {
      int at = base + c;
      double value =
          before * values[at]
              + here * values[at + COLUMNS]
              + next * values[at + 2 * COLUMNS]
              + after * values[at + 3 * COLUMNS];
      row[c] = Math.max(value, 0);
    }
  }
}
