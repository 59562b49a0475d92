package doughtide.report.type;

import doughtide.core.Internal;
import java.awt.Graphics2D;

/** Something that can be drawn at any size. */
@Internal
public interface Drawn {

  /**
   * Draws it into the upper left corner of a surface.
   *
   * @param widthPt width in points
   * @param tallPt height in points
   */
  void paint(Graphics2D graphics, int widthPt, int tallPt);
}
