package doughtide.report.type;

import doughtide.core.Internal;
import doughtide.report.words.Language;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.TimeZone;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSInteger;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentCatalog;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkInfo;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;

/** A tagged document (ISO 32000-1, 14.7 and 14.8) whose bytes depend on its content only. */
@Internal
public final class PdfFile implements AutoCloseable {

  /** Any fixed number serves: it replaces the clock in the file identifier. */
  private static final long DOCUMENT_ID = 20260101L;

  private static final long DATE_MILLIS = 1767225600000L; // 2026-01-01T00:00:00Z, as the build

  private final PDDocument document = new PDDocument();
  private final PDStructureTreeRoot tree = new PDStructureTreeRoot();
  private final PDStructureElement root = new PDStructureElement("Document", tree);
  private final PdfFonts fonts;
  private final List<PdfSheet> sheets = new ArrayList<>();

  public PdfFile(String title, Language language) throws IOException {
    fonts = PdfFonts.in(document);
    PDDocumentInformation information = new PDDocumentInformation();
    information.setTitle(Fonts.spoken(title));
    information.setCreator("doughtide");
    information.setProducer("doughtide");
    information.setCreationDate(fixedDate());
    information.setModificationDate(fixedDate());
    document.setDocumentInformation(information);
    document.setDocumentId(DOCUMENT_ID);
    PDDocumentCatalog catalog = document.getDocumentCatalog();
    catalog.setLanguage(language.tag());
    PDMarkInfo marks = new PDMarkInfo();
    marks.setMarked(true);
    catalog.setMarkInfo(marks);
    PDViewerPreferences preferences = new PDViewerPreferences(new COSDictionary());
    preferences.setDisplayDocTitle(true);
    catalog.setViewerPreferences(preferences);
    catalog.setStructureTreeRoot(tree);
    tree.appendKid(root);
  }

  private static Calendar fixedDate() {
    Calendar date = new GregorianCalendar(TimeZone.getTimeZone("UTC"));
    date.setTimeInMillis(DATE_MILLIS);
    return date;
  }

  public PdfFonts fonts() {
    return fonts;
  }

  public PdfSheet sheet(double widthPt, double heightPt) throws IOException {
    PDPage page = new PDPage(new PDRectangle((float) widthPt, (float) heightPt));
    document.addPage(page);
    page.setStructParents(sheets.size());
    page.getCOSObject().setItem(COSName.getPDFName("Tabs"), COSName.S);
    PdfSheet sheet =
        new PdfSheet(document, page, new PDPageContentStream(document, page), fonts, root);
    sheets.add(sheet);
    return sheet;
  }

  /** Finishes all pages; nothing can be drawn afterwards. */
  public byte[] bytes() throws IOException {
    COSArray numbers = new COSArray();
    for (int i = 0; i < sheets.size(); i++) {
      numbers.add(COSInteger.get(i));
      numbers.add(sheets.get(i).close());
    }
    PDNumberTreeNode parents = new PDNumberTreeNode(COSArray.class);
    parents.getCOSObject().setItem(COSName.NUMS, numbers);
    tree.setParentTree(parents);
    tree.setParentTreeNextKey(sheets.size());
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    document.save(out);
    return out.toByteArray();
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
