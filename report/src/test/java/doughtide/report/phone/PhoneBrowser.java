package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.htmlunit.BrowserVersion;
import org.htmlunit.MockWebConnection;
import org.htmlunit.WebClient;
import org.htmlunit.html.DomElement;
import org.htmlunit.html.DomNode;
import org.htmlunit.html.HtmlElement;
import org.htmlunit.html.HtmlInput;
import org.htmlunit.html.HtmlOption;
import org.htmlunit.html.HtmlPage;
import org.htmlunit.html.HtmlSelect;
import org.htmlunit.util.MimeType;
import org.htmlunit.util.UrlUtils;

/** A telephone without a screen, at a moment of its own, that opens pages and remembers. */
final class PhoneBrowser implements AutoCloseable {

  /** The only form in which HtmlUnit takes a time of day. */
  private static final DateTimeFormatter AS_TYPED =
      DateTimeFormatter.ofPattern("hh:mma", Locale.US);

  private final WebClient client = new WebClient(BrowserVersion.CHROME);
  private final MockWebConnection web = new MockWebConnection();
  private final List<String> asked = new ArrayList<>();
  private HtmlPage page;

  PhoneBrowser() {
    client.setWebConnection(web);
    client.getOptions().setThrowExceptionOnScriptError(true);
    client.getOptions().setThrowExceptionOnFailingStatusCode(true);
  }

  /** Opens a page; opening another of the same site leaves what the first one kept. */
  PhoneBrowser open(String name, String html, Instant now) {
    String then = html.replace("Date.now()", String.valueOf(now.toEpochMilli()));
    assertThat(then).isNotEqualTo(html);
    return openStill(name, then);
  }

  /** Opens a page that has no clock. */
  PhoneBrowser openStill(String name, String html) {
    try {
      var url = UrlUtils.toUrlUnsafe("https://dough.example/" + name);
      web.setResponse(url, html, MimeType.TEXT_HTML, StandardCharsets.UTF_8);
      page = client.getPage(url);
      asked.add(web.getLastWebRequest().getUrl().getPath());
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How many files all pages asked for. */
  int requests() {
    return web.getRequestCount();
  }

  HtmlPage page() {
    return page;
  }

  /** The text of the first element; empty if it shows none. */
  String text(String selector) {
    DomNode node = page.querySelector(selector);
    assertThat(node).as(selector).isNotNull();
    return node.getTextContent().strip();
  }

  List<String> texts(String selector) {
    return page.querySelectorAll(selector).stream()
        .map(node -> node.getTextContent().strip())
        .collect(Collectors.toList());
  }

  String attribute(String selector, String name) {
    return ((DomElement) page.querySelector(selector)).getAttribute(name);
  }

  void type(String selector, String text) {
    HtmlInput input = page.querySelector(selector);
    input.setValue(text);
  }

  void choose(String selector, String value) {
    HtmlSelect select = page.querySelector(selector);
    HtmlOption option = select.getOptionByValue(value);
    select.setSelectedAttribute(option, true);
  }

  void click(String selector) {
    try {
      ((HtmlElement) page.querySelector(selector)).click();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A reading in per cent at a clock time. */
  void read(String percent, String clock) {
    type(".height", percent);
    type(".when", LocalTime.parse(clock).format(AS_TYPED));
    run("document.querySelector('.when').dispatchEvent(new Event('input'))");
    click(".reading button");
  }

  String textArea() {
    return run("document.querySelector('.text').value");
  }

  /** The value of an expression, as text. */
  String run(String script) {
    return String.valueOf(page.executeJavaScript(script).getJavaScriptResult());
  }

  @Override
  public void close() {
    client.close();
  }
}
