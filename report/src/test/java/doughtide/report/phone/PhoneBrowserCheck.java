package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Every kind of page in a real browser, in the profile {@code browser}: no error, a reading within
 * its time, no finding of the accessibility audit. Leaves pictures in {@code target/phone}.
 */
class PhoneBrowserCheck {

  private static final Path PICTURES = Path.of("target", "phone");
  private static final int READINGS = 15;
  private static final BrowserKitchen KITCHEN =
      new BrowserKitchen(ZonedDateTime.now(ZoneId.of("Europe/Berlin")).minusHours(8), 512);

  @TempDir static Path folder;

  private static Path file;
  private static Chromium browser;

  @BeforeAll
  static void openAPage() throws IOException, InterruptedException {
    Files.createDirectories(PICTURES);
    file = folder.resolve("page.html");
    Files.writeString(file, page());
    Optional<Chromium> found = Chromium.ifInstalled(file, folder.resolve("profile"));
    assumeTrue(found.isPresent(), "no browser");
    browser = found.orElseThrow();
  }

  @AfterAll
  static void closeIt() {
    if (browser != null) {
      browser.close();
    }
  }

  private static String page() {
    return PhonePage.of(KITCHEN.dough("Saturday loaf"), Words.in(Language.ENGLISH)).html();
  }

  private static void open(String html) throws IOException, InterruptedException {
    Files.writeString(file, html);
    browser.show(file);
    browser.run("localStorage.clear()");
    browser.show(file);
  }

  /** On telephones and on a desk, in the light and in the dark: it fits, and nothing is found. */
  @ParameterizedTest
  @EnumSource
  void everyPageInEveryLanguage(Language language) throws IOException, InterruptedException {
    for (Map.Entry<String, PhonePage> page : KITCHEN.pages(Words.in(language)).entrySet()) {
      open(page.getValue().html());
      for (String scheme : new String[] {"light", "dark"}) {
        for (int width : new int[] {320, 360, 1280}) {
          browser.look(width, width < 600 ? 740 : 800, scheme);
          assertIsGood(page.getKey() + "-" + language.tag() + "-" + width + "-" + scheme, width);
        }
      }
    }
  }

  private static void assertIsGood(String name, int width)
      throws IOException, InterruptedException {
    Files.write(PICTURES.resolve(name + ".png"), browser.picture());
    assertThat(browser.run("document.documentElement.scrollWidth")).as(name).isEqualTo("" + width);
    assertThat(browser.audit()).as(name).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"360,740,light", "360,740,dark", "320,640,light", "1280,800,light", "1280,800,dark"})
  void worksWithAReading(int width, int height, String scheme)
      throws IOException, InterruptedException {
    browser.look(width, height, scheme);
    open(page());
    assertThat(browser.run("document.querySelectorAll('.dots circle').length")).isEqualTo("20");
    browser.run(typed(12, 1));
    browser.run(ADD);
    assertThat(browser.run("document.querySelectorAll('.readings li').length")).isEqualTo("1");
    String name = width + "-" + scheme + "-read";
    assertIsGood(name, width);
    Files.write(PICTURES.resolve(name + ".pdf"), browser.printed());
  }

  private static final String ADD = "document.querySelector('.reading button').click()";
  private static final String DRAWN =
      "new Promise(done => requestAnimationFrame(() => requestAnimationFrame("
          + "() => setTimeout(done, 0))))";

  /** A height, percent, at an hour since mixing. */
  private static String typed(int percent, double hours) {
    return "document.querySelector('.height').value = '"
        + percent
        + "'; document.querySelector('.when').value = doughs[0].clock.ofDay("
        + hours
        + "); document.querySelector('.when').dispatchEvent(new Event('input')); 'typed'";
  }

  /**
   * Processor time of the page's own thread for a reading, medians: script, style and layout, which
   * must be done before anything new is seen, and everything to the second picture after it. A slow
   * telephone is taken to be four times as slow (starting value).
   */
  @Test
  void aReadingIsSeenSoon() throws IOException, InterruptedException {
    browser.look(360, 740, "light");
    open(page());
    browser.call("Performance.enable", "{\"timeDomain\":\"threadTicks\"}");
    double[] drawn = new double[READINGS];
    double[] all = new double[READINGS];
    for (int i = 0; i < READINGS; i++) {
      browser.run(typed(2 + i, 0.3 + 0.25 * i));
      browser.run(DRAWN);
      double[] before = spent();
      browser.run(ADD);
      browser.run(DRAWN);
      double[] after = spent();
      drawn[i] = after[0] - before[0];
      all[i] = after[1] - before[1];
    }
    System.out.printf(
        "a reading takes %.1f ms of the processor to be drawn, %.1f ms with painting (medians of"
            + " %d)%n",
        median(drawn), median(all), READINGS);
    assertThat(median(drawn)).isLessThan(50 / 4.0);
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  /** Milliseconds of script, style and layout together, and of every task. */
  private static double[] spent() throws InterruptedException {
    String metrics = browser.call("Performance.getMetrics", "{}");
    return new double[] {
      spent(metrics, "ScriptDuration")
          + spent(metrics, "RecalcStyleDuration")
          + spent(metrics, "LayoutDuration"),
      spent(metrics, "TaskDuration")
    };
  }

  private static double spent(String metrics, String name) {
    Matcher value =
        Pattern.compile("\"name\":\"" + name + "\",\"value\":([0-9.eE+-]+)").matcher(metrics);
    assertThat(value.find()).as(name).isTrue();
    return 1000 * Double.parseDouble(value.group(1));
  }
}
