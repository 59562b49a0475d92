package doughtide.report.type;

import de.rototor.pdfbox.graphics2d.IPdfBoxGraphics2DFontTextDrawer;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2DFontTextDrawer;
import doughtide.core.Internal;
import java.awt.Font;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** The two faces inside one PDF document, embedded as subsets. */
@Internal
public record PdfFonts(PDFont plain, PDFont bold) {

  /** One a thread, because a face keeps what it has measured. */
  private static final ThreadLocal<PdfFonts> MEASURING =
      ThreadLocal.withInitial(PdfFonts::inNoDocument);

  /** Faces that are only measured with, not written; made once a thread. */
  public static PdfFonts forMeasuring() {
    return MEASURING.get();
  }

  private static PdfFonts inNoDocument() {
    try {
      return in(new PDDocument());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static PdfFonts in(PDDocument document) throws IOException {
    return new PdfFonts(load(document, Fonts.plainFile()), load(document, Fonts.boldFile()));
  }

  private static PDFont load(PDDocument document, InputStream file) throws IOException {
    try (file) {
      return PDType0Font.load(document, file, true);
    }
  }

  /** Width in points. */
  public double width(String text, PDFont font, double sizePt) {
    try {
      return font.getStringWidth(text) / 1000 * sizePt;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Draws every text of a chart with these two faces. */
  public IPdfBoxGraphics2DFontTextDrawer textDrawer() {
    return new PdfBoxGraphics2DFontTextDrawer() {
      @Override
      protected boolean hasDynamicFontMapping() {
        return true;
      }

      @Override
      protected PDFont mapFont(Font font, IFontTextDrawerEnv env) {
        boolean heavy = font.isBold() || font.getFontName(Locale.ROOT).contains("Bold");
        return heavy ? bold : plain;
      }
    };
  }
}
