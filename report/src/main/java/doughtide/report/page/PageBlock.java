package doughtide.report.page;

import doughtide.core.Internal;
import doughtide.report.type.PdfSheet;
import java.io.IOException;

/** A piece of a page, as wide as the text. Implementations hold no state. */
@Internal
public interface PageBlock {

  /** What it is, for the reason why a page does not fit. */
  String name();

  /** The least height in points, with the gap below it. */
  double heightPt(PageType type, double widthPt);

  /** Whether it takes up height that is left over. */
  default boolean grows() {
    return false;
  }

  /** Of how many rows it is, between which it can be parted onto two sides; 0 if it cannot be. */
  default int rows() {
    return 0;
  }

  /**
   * Some of its rows as a block of their own.
   *
   * @param from the first, from 0
   * @param to the one after the last
   */
  default PageBlock rows(int from, int to) {
    return this;
  }

  /** Draws into the given frame, which is at least as tall as asked for. */
  void draw(PdfSheet sheet, PageType type, double xPt, double topPt, double widthPt, double tallPt)
      throws IOException;
}
