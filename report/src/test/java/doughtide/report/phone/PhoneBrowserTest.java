package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The page followed in a real browser, from a file and without a network, where a Chromium is
 * installed. {@link PhoneBrowserCheck} looks at every kind of page, in every language.
 */
class PhoneBrowserTest {

  private static final Words ENGLISH = Words.in(Language.ENGLISH);

  /** The night in which the clocks of Berlin go forward. */
  private static final ZonedDateTime MIXED =
      ZonedDateTime.parse("2027-03-27T22:00+01:00[Europe/Berlin]");

  private static final String HOSTILE =
      "</script><img src=x onerror='top.hacked=1'><b onclick=\"hacked()\">{{title}} & \"Anna\"";

  @TempDir static Path folder;

  private static PhoneDough loaf;
  private static Chromium browser;

  @BeforeAll
  static void openAPage() throws IOException, InterruptedException {
    loaf = new BrowserKitchen(MIXED, 64).dough(HOSTILE);
    Path file = folder.resolve("dough.html");
    Files.writeString(file, PhonePage.of(loaf, ENGLISH).html());
    Optional<Chromium> found = Chromium.ifInstalled(file, folder.resolve("profile"));
    assumeTrue(found.isPresent(), "no browser");
    browser = found.orElseThrow();
    browser.call("Page.enable", "{}");
    browser.call("Emulation.setTimezoneOverride", "{\"timezoneId\":\"Pacific/Auckland\"}");
    browser.call(
        "Page.addScriptToEvaluateOnNewDocument",
        "{\"source\":\"Date.now = () => %d\"}"
            .formatted(MIXED.plusHours(3).toInstant().toEpochMilli()));
    browser.show(file);
  }

  @AfterAll
  static void closeIt() {
    if (browser != null) {
      browser.close();
    }
  }

  private static String text(String selector) throws InterruptedException {
    return browser.run("document.querySelector('" + selector + "').textContent");
  }

  private static void read(String percent, String clock) throws InterruptedException {
    browser.run(
        "(() => { document.querySelector('.height').value = '"
            + percent
            + "'; document.querySelector('.when').value = '"
            + clock
            + "'; document.querySelector('.when').dispatchEvent(new Event('input'));"
            + " document.querySelector('.reading button').click(); })()");
  }

  private static String clock(double hours) {
    return new PhoneClock(MIXED, 24, false, ENGLISH).at(OptionalDouble.of(hours));
  }

  /**
   * A stranger far away with the file alone, in a night in which the clocks change: every time is
   * that of the dough's own clock, readings and ticks are still there after a reload, and what
   * leaves the page is what was typed.
   */
  @Test
  void aStrangerFollowsADoughToItsShapePoint() throws InterruptedException {
    double likely = loaf.loaf().orElseThrow().shape().hours().likely().orElseThrow();
    browser.look(320, 640, "light");
    assertThat(text("h1")).isEqualTo(HOSTILE);
    assertThat(browser.run("typeof top.hacked")).isEqualTo("undefined");
    assertThat(text(".answer")).startsWith("Shape about " + clock(likely));
    assertThat(text(".left")).isEqualTo("in " + ENGLISH.hours(likely - 3));
    assertThat(browser.run("document.querySelector('.when').value")).isEqualTo("01:00");
    read("6", "01:00");
    read("20", "03:30"); // half an hour after 02:00, which was 03:00
    assertThat(text(".readings")).isEqualTo("Sun 01:00 · 6%Remove" + "Sun 03:30 · 20%Remove");
    assertThat(browser.run("doughs[0].clock.hoursOf('03:30', 24)")).isEqualTo("4.5");
    browser.run("document.querySelector('[data-step] input').click()");
    String answer = text(".answer");
    assertThat(answer).startsWith("Shape about Sun 0");
    browser.show(folder.resolve("dough.html"));
    assertThat(text(".answer")).isEqualTo(answer);
    assertThat(browser.run("document.querySelector('[data-step] input').checked"))
        .isEqualTo("true");
    assertThat(browser.run("document.querySelector('.text').value"))
        .endsWith("2027-03-28T01:00;6;;\n2027-03-28T03:30;20;;\n");
    assertThat(browser.run("document.documentElement.scrollWidth")).isEqualTo("320");
    browser.run("document.querySelectorAll('.readings button').forEach(each => each.click())");
    browser.run("document.querySelector('.readings button').click()");
  }

  /** Copying that a browser refuses leaves the text selected and says so. */
  @Test
  void saysWhenTheTextCannotBeCopied() throws InterruptedException {
    browser.run(
        "navigator.clipboard.writeText = () => Promise.reject(new Error('no'));"
            + " document.execCommand = () => false; document.querySelector('.copy').click()");
    browser.run("new Promise(done => setTimeout(done, 50))");
    assertThat(text(".kept")).isEqualTo(ENGLISH.say("phone.notCopied"));
    assertThat(browser.run("document.activeElement.className")).isEqualTo("text");
    assertThat(
            browser.run(
                "(t => t.selectionEnd - t.selectionStart === t.value.length)(document"
                    + ".querySelector('.text'))"))
        .isEqualTo("true");
  }

  @Test
  void nothingIsLoadedFromOutside() throws InterruptedException {
    assertThat(
            browser.run(
                "new Promise(done => { document.addEventListener('securitypolicyviolation',"
                    + " e => done(e.effectiveDirective));"
                    + " fetch('https://dough.example/').catch(() => {}); })"))
        .isEqualTo("connect-src");
    assertThat(browser.run("performance.getEntriesByType('resource').length")).isEqualTo("0");
  }

  @Test
  void everybodyCanUseItInTheLightAndInTheDark() throws IOException, InterruptedException {
    browser.look(360, 740, "light");
    assertThat(browser.audit()).isEmpty();
    assertThat(browser.run("document.documentElement.scrollWidth")).isEqualTo("360");
    browser.look(1280, 800, "dark");
    assertThat(browser.audit()).isEmpty();
    assertThat(browser.run("document.documentElement.scrollWidth")).isEqualTo("1280");
  }

  @Test
  void isPrintedOnOnePage() throws IOException, InterruptedException {
    try (PDDocument printed = Loader.loadPDF(browser.printed())) {
      assertThat(printed.getNumberOfPages()).isEqualTo(1);
    }
  }

  /** Every field, button and link is reached by the key, in the order of the page, and is seen. */
  @Test
  void theKeyboardReachesEverythingInOrder() throws InterruptedException {
    browser.show(folder.resolve("dough.html"));
    List<String> wanted =
        List.of(
            browser
                .run(
                    "(() => { window.all = Array.from(document.querySelectorAll('input, select,"
                        + " textarea, button, a[href]')).filter(e => e.offsetParent);"
                        + " return all.map((e, i) => i).join(' '); })()")
                .split(" "));
    int at = -1;
    int seen = 0;
    for (int press = 0; press < 3 * wanted.size() && at < wanted.size() - 1; press++) {
      browser.press("Tab");
      int now = Integer.parseInt(browser.run("all.indexOf(document.activeElement)"));
      if (now != at) {
        assertThat(now).isEqualTo(at + 1);
        String wide = browser.run("getComputedStyle(document.activeElement).outlineStyle");
        assertThat(wide).isEqualTo("solid");
        at = now;
        seen++;
      }
    }
    assertThat(seen).isEqualTo(wanted.size());
  }

  @Test
  void nothingMovesWhereThatIsNotWanted() throws InterruptedException {
    String how = "getComputedStyle(document.querySelector('.over .now')).transitionDuration";
    browser.prefers("prefers-reduced-motion", "reduce");
    assertThat(browser.run(how)).isEqualTo("0s");
    browser.prefers("prefers-reduced-motion", "no-preference");
    assertThat(browser.run(how)).isEqualTo("0.3s");
  }
}
