package doughtide.report.chart;

import doughtide.report.type.Fonts;
import java.awt.Dimension;
import java.awt.RenderingHints;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Vector picture through Batik; words stay words, with a fallback family for other machines. */
record SvgChartWriter() implements ChartWriter {

  /** As wide as the bundled face, on the machines of most readers; then any without serifs. */
  private static final String COMMON_FONTS = ",Arial,Helvetica,'Nimbus Sans',sans-serif";

  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  @Override
  public byte[] write(PrintedChart chart, ChartSize size, ChartCaption caption) {
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(newDocument());
    context.setComment(null);
    context.setPrecision(2);
    SVGGraphics2D graphics = new SVGGraphics2D(context, false);
    graphics.setSVGCanvasSize(new Dimension(size.widthPt(), size.heightPt()));
    // XChart, inside, puts back the hint that it found, and none at all is refused.
    graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
    chart.paint(graphics, size.widthPt(), size.heightPt());
    Element root = graphics.getRoot();
    describe(root, size, caption);
    nameFallbackFonts(root);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (Writer out = new OutputStreamWriter(bytes, StandardCharsets.UTF_8)) {
      graphics.stream(root, out, true, false);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      graphics.dispose();
    }
    return bytes.toByteArray();
  }

  private static void describe(Element root, ChartSize size, ChartCaption caption) {
    root.setAttribute("viewBox", "0 0 " + size.widthPt() + " " + size.heightPt());
    root.setAttribute("width", millimetres(size.widthPt()));
    root.setAttribute("height", millimetres(size.heightPt()));
    root.setAttributeNS(
        "http://www.w3.org/XML/1998/namespace", "xml:lang", caption.language().tag());
    root.setAttribute("role", "img");
    root.insertBefore(text(root, "desc", caption.description()), root.getFirstChild());
    root.insertBefore(text(root, "title", caption.title()), root.getFirstChild());
  }

  private static Element text(Element root, String name, String content) {
    Element element = root.getOwnerDocument().createElementNS(NAMESPACE, name);
    element.setTextContent(Fonts.spoken(content));
    return element;
  }

  private static String millimetres(int points) {
    return String.format(Locale.ROOT, "%.2fmm", points * 25.4 / 72);
  }

  private static void nameFallbackFonts(Element root) {
    NodeList all = root.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      nameFallbackFonts((Element) all.item(i), "font-family");
      nameFallbackFonts((Element) all.item(i), "style");
    }
    nameFallbackFonts(root, "font-family");
    nameFallbackFonts(root, "style");
  }

  private static void nameFallbackFonts(Element element, String attribute) {
    String value = element.getAttribute(attribute);
    String quoted = "'" + Fonts.FAMILY + "'";
    if (value.contains(quoted)) {
      element.setAttribute(attribute, value.replace(quoted, quoted + COMMON_FONTS));
    }
  }

  private static Document newDocument() {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      return factory
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(NAMESPACE, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new IllegalStateException(e);
    }
  }
}
