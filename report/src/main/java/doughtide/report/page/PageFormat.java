package doughtide.report.page;

/**
 * How a page is laid out.
 *
 * @param paper the sheet
 * @param orientation which way round
 * @param text how large
 */
public record PageFormat(PaperSize paper, Orientation orientation, TextSize text) {

  /** Which way round the sheet lies. */
  public enum Orientation {
    /** Taller than wide. */
    UPRIGHT,
    /** Wider than tall. */
    SIDEWAYS
  }

  /** Size of running text; nothing on a page is smaller. */
  public enum TextSize {
    /** 12 pt. */
    STANDARD(12),
    /** 16 pt, for large print. */
    LARGE(16);

    private final double sizePt;

    TextSize(double sizePt) {
      this.sizePt = sizePt;
    }

    /** {@return size in points} */
    public double sizePt() {
      return sizePt;
    }
  }

  /** {@return upright A4 with text of 12 pt} */
  public static PageFormat a4() {
    return new PageFormat(PaperSize.A4, Orientation.UPRIGHT, TextSize.STANDARD);
  }

  /** {@return the same page lying on its side} */
  public PageFormat sideways() {
    return new PageFormat(paper, Orientation.SIDEWAYS, text);
  }

  /** {@return the same page in large print} */
  public PageFormat largePrint() {
    return new PageFormat(paper, orientation, TextSize.LARGE);
  }

  double widthPt() {
    return orientation == Orientation.UPRIGHT ? paper.widthPt() : paper.heightPt();
  }

  double heightPt() {
    return orientation == Orientation.UPRIGHT ? paper.heightPt() : paper.widthPt();
  }
}
