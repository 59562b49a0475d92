package doughtide.report.type;

import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import doughtide.core.Internal;
import doughtide.report.words.Language;
import java.io.IOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.markedcontent.PDPropertyList;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/**
 * One page of a tagged document (ISO 32000-1, 14.7 and 14.8) whose bytes depend on its content
 * only. Coordinates run from the upper left corner, in points.
 */
@Internal
public final class PdfSheet {

  private final PDDocument document;
  private final PDPage page;
  private final PDPageContentStream content;
  private final PdfFonts fonts;
  private final double heightPt;
  private final COSArray parents = new COSArray();
  private PDStructureElement open;

  public PdfSheet(
      PDDocument document,
      PDPage page,
      PDPageContentStream content,
      PdfFonts fonts,
      PDStructureElement root) {
    this.document = document;
    this.page = page;
    this.content = content;
    this.fonts = fonts;
    this.heightPt = page.getMediaBox().getHeight();
    this.open = root;
  }

  PdfFonts fonts() {
    return fonts;
  }

  /** Opens a structure element that holds others, such as a table; closed by {@link #end}. */
  public void begin(String type) {
    PDStructureElement element = new PDStructureElement(type, open);
    open.appendKid(element);
    open = element;
  }

  /** Opens a figure drawn piece by piece, with what it answers; closed by {@link #end}. */
  public void beginFigure(String description) {
    begin("Figure");
    open.setAlternateDescription(Fonts.spoken(description));
  }

  /** The language of the element that is open and of all in it. */
  public void speak(Language language) {
    open.setLanguage(language.tag());
  }

  public void end() {
    open = (PDStructureElement) open.getParent();
  }

  /** Draws one line of text, marked with the structure type that is open. */
  public void text(String text, double xPt, double baselinePt, PDFont font, double sizePt)
      throws IOException {
    beginMarked(open);
    content.beginText();
    content.setFont(font, (float) sizePt);
    content.newLineAtOffset((float) xPt, (float) (heightPt - baselinePt));
    content.showText(text);
    content.endText();
    content.endMarkedContent();
  }

  /** Draws a rule; rules carry no meaning for a reader by ear. */
  public void line(double x1Pt, double y1Pt, double x2Pt, double y2Pt, double thicknessPt)
      throws IOException {
    line(x1Pt, y1Pt, x2Pt, y2Pt, thicknessPt, 0);
  }

  /**
   * The same in grey.
   *
   * @param grey 0 for black to 1 for white
   */
  public void line(
      double x1Pt, double y1Pt, double x2Pt, double y2Pt, double thicknessPt, double grey)
      throws IOException {
    beginArtifact();
    content.setStrokingColor((float) grey);
    content.setLineWidth((float) thicknessPt);
    content.moveTo((float) x1Pt, (float) (heightPt - y1Pt));
    content.lineTo((float) x2Pt, (float) (heightPt - y2Pt));
    content.stroke();
    content.endMarkedContent();
  }

  /** Draws an empty frame. */
  public void box(double xPt, double topPt, double widthPt, double tallPt, double thicknessPt)
      throws IOException {
    beginArtifact();
    content.setStrokingColor(0f);
    content.setLineWidth((float) thicknessPt);
    content.addRect(
        (float) xPt, (float) (heightPt - topPt - tallPt), (float) widthPt, (float) tallPt);
    content.stroke();
    content.endMarkedContent();
  }

  /** Draws a picture as vectors, tagged as a figure with its description. */
  public void figure(
      Drawn drawn, double xPt, double topPt, double widthPt, double tallPt, String description)
      throws IOException {
    beginFigure(description);
    beginMarked(open);
    content.saveGraphicsState();
    content.transform(
        Matrix.getTranslateInstance((float) xPt, (float) (heightPt - topPt - tallPt)));
    content.drawForm(form(drawn, (int) Math.round(widthPt), (int) Math.round(tallPt)));
    content.restoreGraphicsState();
    content.endMarkedContent();
    end();
  }

  private PDFormXObject form(Drawn drawn, int widthPt, int tallPt) throws IOException {
    PdfBoxGraphics2D graphics = new PdfBoxGraphics2D(document, widthPt, tallPt);
    graphics.setFontTextDrawer(fonts.textDrawer());
    drawn.paint(graphics, widthPt, tallPt);
    graphics.dispose();
    return graphics.getXFormObject();
  }

  private void beginMarked(PDStructureElement element) throws IOException {
    int id = parents.size();
    parents.add(element.getCOSObject());
    element.setPage(page);
    element.getCOSObject().setItem(COSName.PG, page);
    element.appendKid(id);
    COSDictionary properties = new COSDictionary();
    properties.setInt(COSName.MCID, id);
    content.beginMarkedContent(
        COSName.getPDFName(element.getStructureType()), PDPropertyList.create(properties));
  }

  private void beginArtifact() throws IOException {
    content.beginMarkedContent(COSName.ARTIFACT);
  }

  /** Finishes the page and gives back the elements that its marks belong to. */
  public COSArray close() throws IOException {
    content.close();
    return parents;
  }
}
