package doughtide.report.page;

import doughtide.core.quantity.InputException;
import java.util.Locale;

/** Sheets that pages are made for, upright, in points of 1/72 inch. */
public enum PaperSize {
  /** 210 mm × 297 mm (ISO 216). */
  A4(595.28, 841.89),
  /** 8.5 in × 11 in (ANSI/ASME Y14.1). */
  LETTER(612, 792);

  private final double widthPt;
  private final double heightPt;

  PaperSize(double widthPt, double heightPt) {
    this.widthPt = widthPt;
    this.heightPt = heightPt;
  }

  double widthPt() {
    return widthPt;
  }

  double heightPt() {
    return heightPt;
  }

  /**
   * The sheet with the given name, in any case.
   *
   * @param name upper or lower case
   * @return the size
   * @throws InputException when there is no such sheet
   */
  public static PaperSize of(String name) {
    for (PaperSize size : values()) {
      if (size.name().equals(name.strip().toUpperCase(Locale.ROOT))) {
        return size;
      }
    }
    throw new InputException("paper", "paper \"" + name + "\" is not known: use A4 or letter");
  }
}
