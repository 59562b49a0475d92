package doughtide.report.page;

import doughtide.report.type.Fonts;
import doughtide.report.type.PdfFonts;
import doughtide.report.type.TextWrap;
import java.util.List;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** The type of a page: its faces, size and line spacing. */
record PageType(PdfFonts fonts, double sizePt) {

  double lineHeightPt() {
    return sizePt * 1.32;
  }

  PageType scaled(double factor) {
    return new PageType(fonts, sizePt * factor);
  }

  double width(String text, PDFont font) {
    return fonts.width(Fonts.printable(text), font, sizePt);
  }

  List<String> lines(String text, double widthPt, PDFont font) {
    return TextWrap.lines(text, widthPt, line -> fonts.width(line, font, sizePt));
  }

  /** Where the baseline lies below the upper edge of a line. */
  double baselinePt() {
    return sizePt * 1.02;
  }
}
