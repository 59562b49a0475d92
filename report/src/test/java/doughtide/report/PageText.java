package doughtide.report;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** The characters of a page with the area that each covers, from the upper left corner. */
public final class PageText extends PDFTextStripper {

  public record Glyph(String text, Rectangle2D area, double sizePt) {}

  private final List<Glyph> characters = new ArrayList<>();

  private PageText() {
    setSuppressDuplicateOverlappingText(false);
  }

  public static List<Glyph> of(PDDocument document, int page) throws IOException {
    PageText stripper = new PageText();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    stripper.writeText(document, new StringWriter());
    return stripper.characters;
  }

  @Override
  protected void processTextPosition(TextPosition position) {
    if (!position.getUnicode().isBlank()) {
      double tall = position.getFontSizeInPt();
      characters.add(
          new Glyph(
              position.getUnicode(),
              new Rectangle2D.Double(
                  position.getXDirAdj() + 0.3,
                  position.getYDirAdj() - 0.62 * tall,
                  Math.max(0.2, position.getWidthDirAdj() - 0.6),
                  0.6 * tall),
              tall));
    }
    super.processTextPosition(position);
  }
}
