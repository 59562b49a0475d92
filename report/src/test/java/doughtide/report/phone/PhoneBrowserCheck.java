package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import doughtide.core.dough.DoughFormula;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.feeding.FeedingPlanner;
import doughtide.core.feeding.RefreshmentPlan;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.JarError;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.thermal.TemperatureTrace;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

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

  /** Doughs and starters as of three hours ago, computed once. */
  private static final class Kitchen {
    private static final Kitchen ALL = new Kitchen();
    private final RiseForecaster forecaster = RiseForecaster.standard().keepingCurves();
    private final ZonedDateTime mixed = ZonedDateTime.now(ZoneId.of("Europe/Berlin")).minusHours(3);
    private final PhoneDough dough = dough();
    private final RefreshmentPlan plan =
        FeedingPlanner.with(RiseForecaster.standard())
            .refresh(
                Feeding.of(new FeedRatio(1, 5, 5)),
                1,
                TemperatureTrace.steady(Temperature.ofCelsius(22)));
    private final PhoneLesson lesson = lesson();

    private RiseForecast at(double celsius) {
      return forecaster.forecast(
          DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(celsius)));
    }

    private PhoneDough dough() {
      RiseForecast forecast = at(25);
      Proof proof = Proof.inColdUntil(Temperature.ofCelsius(4), 17);
      return PhoneDough.of("Saturday loaf", mixed, forecast, Rise.ofPercent(50))
          .with(new PhoneDough.Loaf(proof, ShapeForecaster.of(forecast, proof).forecast()));
    }

    private PhoneLesson lesson() {
      return new PhoneLesson(
          "Warmth",
          List.of(new PhoneLesson.Axis(PhoneLesson.Thing.DOUGH_TEMP, 1, 3)),
          List.of(at(21), at(25), at(28)),
          List.of(Rise.ofPercent(50), Rise.ofPercent(100)),
          Rise.ofPercent(50));
    }

    Map<String, PhonePage> pages(Words words) {
      PhoneDough.Plan shape =
          new PhoneDough.Plan(
              dough.forecast().hoursToRise(dough.asked()),
              List.of(new PhoneDough.Step("mix", 0, "25 °C", false)));
      PhoneDough planned =
          PhoneDough.of("Anna", mixed, dough.forecast(), Rise.ofPercent(50)).with(shape);
      return Map.of(
          "dough", PhonePage.of(dough, words),
          "class", PhonePage.ofDoughs("Saturday", List.of(planned, planned), words),
          "lesson", PhonePage.of(lesson, words),
          "starter",
              PhonePage.of(
                  PhoneStarter.of(plan, List.of(), mixed, JarError.standard(), words), words));
    }
  }

  private static String page() {
    return PhonePage.of(Kitchen.ALL.dough, Words.in(Language.ENGLISH)).html();
  }

  /**
   * On a telephone in the light and on a desk in the dark: it fits, and the audit finds nothing.
   */
  @ParameterizedTest
  @EnumSource
  void everyPageInEveryLanguage(Language language) throws IOException, InterruptedException {
    Path file = folder.resolve("page.html");
    Map<String, PhonePage> pages = Kitchen.ALL.pages(Words.in(language));
    Files.writeString(file, pages.get("dough").html());
    try (Chromium browser = Chromium.open(program, file, folder.resolve("profile"))) {
      for (Map.Entry<String, PhonePage> page : pages.entrySet()) {
        Files.writeString(file, page.getValue().html());
        for (int width : new int[] {360, 1280}) {
          look(browser, width, width < 600 ? 740 : 800, width < 600 ? "light" : "dark");
          browser.show(file);
          String name = page.getKey() + "-" + language.tag() + "-" + width;
          picture(browser, name);
          assertThat(browser.run("document.documentElement.scrollWidth"))
              .as(name)
              .isEqualTo("" + width);
          audit(browser);
        }
      }
    }
  }

  private static void look(Chromium browser, int width, int height, String scheme)
      throws InterruptedException {
    browser.call(
        "Emulation.setDeviceMetricsOverride",
        "{\"width\":%d,\"height\":%d,\"deviceScaleFactor\":1,\"mobile\":%b}"
            .formatted(width, height, width < 600));
    browser.call(
        "Emulation.setEmulatedMedia",
        "{\"features\":[{\"name\":\"prefers-color-scheme\",\"value\":\"" + scheme + "\"}]}");
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
      look(browser, width, height, scheme);
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
