package doughtide.report.phone;

import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartFrame;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The report's chart inside a page: as wide as its place, without styles inside elements (which the
 * page's policy forbids), and with an empty layer over it that knows where the plot lies.
 */
final class EmbeddedChart {

  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  private final Document document;
  private final String prefix;

  private EmbeddedChart(Document document, String prefix) {
    this.document = document;
    this.prefix = prefix;
  }

  /**
   * A chart for a place.
   *
   * @param place a class of the page's style, which also keeps the names inside apart
   */
  static Markup of(PhoneSubject.Chart chart, ChartSize size, String place) {
    Document svg = parsed(ChartOutput.bytes(chart.drawn(), ChartFormat.SVG, size, chart.caption()));
    return new EmbeddedChart(svg, place)
        .markup(
            numbers(chart.drawn().frame(size.widthPt(), size.heightPt()), chart.isInTimes()),
            place.substring(place.indexOf('-') + 1));
  }

  private static Document parsed(byte[] svg) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      DocumentBuilder builder = factory.newDocumentBuilder();
      builder.setEntityResolver(
          (name, place) -> new InputSource(new ByteArrayInputStream(new byte[0])));
      return builder.parse(new ByteArrayInputStream(svg));
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new IllegalStateException("a chart of this program is no SVG", e);
    }
  }

  private Markup markup(String frame, String style) {
    Element root = document.getDocumentElement();
    NodeList all = root.getElementsByTagName("*");
    for (int i = 0; i < all.getLength(); i++) {
      plain((Element) all.item(i));
    }
    plain(root);
    root.removeAttribute("width");
    root.removeAttribute("height");
    root.removeAttribute("font-family");
    root.setAttribute("class", style);
    Element layer = document.createElementNS(NAMESPACE, "g");
    layer.setAttribute("class", "over");
    layer.setAttribute("data-frame", frame);
    root.appendChild(layer);
    return new Markup(written());
  }

  /** The upright axis in per cent of rise. */
  private static String numbers(ChartFrame frame, boolean isInTimes) {
    DoubleUnaryOperator percent = isInTimes ? times -> 100 * (times - 1) : same -> same;
    return Stream.concat(
            Stream.of(
                frame.top(),
                frame.bottom(),
                percent.applyAsDouble(frame.yLeast()),
                percent.applyAsDouble(frame.yMost())),
            frame.xs().stream().flatMap(each -> Stream.of(each.value(), each.at())))
        .map(each -> String.format(Locale.ROOT, "%.3f", each))
        .collect(Collectors.joining(" "));
  }

  /** Each property as an attribute of its own; each name of its own chart. */
  private void plain(Element element) {
    String style = element.getAttribute("style");
    element.removeAttribute("style");
    element.removeAttribute("font-family");
    for (String property : style.split(";")) {
      int colon = property.indexOf(':');
      String name = colon < 0 ? "" : property.substring(0, colon).strip();
      if (!name.isEmpty() && !name.equals("font-family")) {
        element.setAttribute(name, property.substring(colon + 1).strip());
      }
    }
    if (!element.getAttribute("id").isEmpty()) {
      element.setAttribute("id", prefix + "-" + element.getAttribute("id"));
    }
    String clip = element.getAttribute("clip-path");
    if (!clip.isEmpty()) {
      element.setAttribute("clip-path", clip.replace("url(#", "url(#" + prefix + "-"));
    }
  }

  private String written() {
    try {
      Transformer transformer = TransformerFactory.newInstance().newTransformer();
      transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
      StringWriter text = new StringWriter();
      transformer.transform(new DOMSource(document.getDocumentElement()), new StreamResult(text));
      return text.toString();
    } catch (TransformerException e) {
      throw new IllegalStateException("a chart of this program cannot be written", e);
    }
  }
}
