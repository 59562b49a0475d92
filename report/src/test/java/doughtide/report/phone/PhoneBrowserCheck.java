package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The page in a real browser, in the profile {@code browser}: no error, a reading within its time,
 * no finding of the accessibility audit. Leaves pictures in {@code target/phone}.
 */
class PhoneBrowserCheck {

  private static final Path PICTURES = Path.of("target", "phone");

  @TempDir Path folder;

  private static Path program;

  @BeforeAll
  static void findABrowser() throws IOException {
    Optional<Path> found = Chromium.installed();
    assumeTrue(found.isPresent(), "no Chromium is installed");
    program = found.orElseThrow();
    Files.createDirectories(PICTURES);
  }

  private static String page() {
    RiseForecast forecast =
        RiseForecaster.standard()
            .keepingCurves()
            .forecast(
                DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
    Proof proof = Proof.inColdUntil(Temperature.ofCelsius(4), 17);
    ZonedDateTime mixed = ZonedDateTime.now(ZoneId.of("Europe/Berlin")).minusHours(3);
    PhoneDough dough =
        PhoneDough.of("Saturday loaf", mixed, forecast, Rise.ofPercent(50))
            .with(new PhoneDough.Loaf(proof, ShapeForecaster.of(forecast, proof).forecast()));
    return PhonePage.of(dough, Words.in(Language.ENGLISH)).html();
  }

  private static String axe() throws IOException {
    try (InputStream in = PhoneBrowserCheck.class.getResourceAsStream("/axe.min.js")) {
      assumeTrue(in != null, "the audit is only on the path of the profile browser");
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @ParameterizedTest
  @CsvSource({"360,740,light", "360,740,dark", "320,640,light", "1280,800,light", "1280,800,dark"})
  void worksAndCanBeUsedByEverybody(int width, int height, String scheme)
      throws IOException, InterruptedException {
    Path file = folder.resolve("dough.html");
    Files.writeString(file, page());
    try (Chromium browser = Chromium.open(program, file, folder.resolve("profile"))) {
      browser.call(
          "Emulation.setDeviceMetricsOverride",
          "{\"width\":%d,\"height\":%d,\"deviceScaleFactor\":1,\"mobile\":%b}"
              .formatted(width, height, width < 600));
      browser.call(
          "Emulation.setEmulatedMedia",
          "{\"features\":[{\"name\":\"prefers-color-scheme\",\"value\":\"" + scheme + "\"}]}");
      assertThat(browser.run("document.querySelectorAll('.dots circle').length")).isEqualTo("20");
      String name = width + "-" + scheme;
      picture(browser, name);
      assertThat(browser.run("document.documentElement.scrollWidth")).isEqualTo("" + width);
      browser.call("Emulation.setCPUThrottlingRate", "{\"rate\":4}"); // about a slow telephone
      double milliseconds = Double.parseDouble(browser.run(READ));
      browser.call("Emulation.setCPUThrottlingRate", "{\"rate\":1}");
      System.out.printf("a reading at %d x %d takes %.0f ms%n", width, height, milliseconds);
      assertThat(milliseconds).isLessThan(500); // machines of a build are busy
      assertThat(browser.run("document.querySelectorAll('.readings li').length")).isEqualTo("1");
      picture(browser, name + "-read");
      audit(browser);
      Files.write(PICTURES.resolve(name + ".pdf"), browser.data("Page.printToPDF", "{}"));
    }
  }

  /** A reading typed an hour ago; milliseconds that it takes. */
  private static final String READ =
      "(() => { const at = doughs[0].clock; document.querySelector('.height').value = '12';"
          + " document.querySelector('.when').value = at.ofDay(at.hoursNow() - 1);"
          + " document.querySelector('.when').dispatchEvent(new Event('input'));"
          + " const before = performance.now();"
          + " document.querySelector('.reading button').click();"
          + " return performance.now() - before; })()";

  private static void picture(Chromium browser, String name)
      throws IOException, InterruptedException {
    Files.write(
        PICTURES.resolve(name + ".png"),
        browser.data("Page.captureScreenshot", "{\"captureBeyondViewport\":true}"));
  }

  private static void audit(Chromium browser) throws IOException, InterruptedException {
    browser.run(axe() + "; 'loaded'");
    String found =
        browser.run(
            "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa',"
                + " 'best-practice'] }).then(r => r.violations.map(v => v.id + ': ' + v.nodes.map("
                + "n => n.html.slice(0, 120) + ' ' + n.failureSummary).join(' | ')).join('\\n'))");
    assertThat(found).isEmpty();
  }
}
