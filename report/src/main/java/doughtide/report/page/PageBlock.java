package doughtide.report.page;

import doughtide.core.Internal;
import doughtide.report.type.PdfSheet;
import java.io.IOException;
import java.util.List;

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

  /** The two parts in which it can stand on two sides; none if it cannot be parted. */
  default List<PageBlock> halves() {
    return List.of();
  }

  /** Draws into the given frame, which is at least as tall as asked for. */
  void draw(PdfSheet sheet, PageType type, double xPt, double topPt, double widthPt, double tallPt)
      throws IOException;
}
