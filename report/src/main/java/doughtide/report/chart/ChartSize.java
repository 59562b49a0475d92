package doughtide.report.chart;

/** Sizes of a chart on a sheet of its own (ISO 216) or a screen, in points of 1/72 inch. */
public enum ChartSize {
  /** 210 mm × 148 mm. */
  A5_LANDSCAPE(595, 420),
  /** 148 mm × 210 mm. */
  A5_PORTRAIT(420, 595),
  /** 297 mm × 210 mm. */
  A4_LANDSCAPE(842, 595),
  /** 210 mm × 297 mm. */
  A4_PORTRAIT(595, 842),
  /** The width of a small telephone, on which its text is still legible. */
  TELEPHONE(340, 420);

  private final int widthPt;
  private final int heightPt;

  ChartSize(int widthPt, int heightPt) {
    this.widthPt = widthPt;
    this.heightPt = heightPt;
  }

  /** {@return width in points} */
  public int widthPt() {
    return widthPt;
  }

  /** {@return height in points} */
  public int heightPt() {
    return heightPt;
  }
}
