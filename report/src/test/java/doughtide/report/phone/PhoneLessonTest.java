package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.StarterShare;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.htmlunit.html.DomElement;
import org.htmlunit.html.DomNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A lesson in a browser without a screen. */
class PhoneLessonTest {

  private static final Rise HALF = Rise.ofPercent(50);
  private static final Words ENGLISH = Words.in(Language.ENGLISH);

  private static PhoneLesson lesson;
  private final PhoneBrowser phone = new PhoneBrowser();

  @BeforeAll
  static void forecastSixDoughs() {
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(64);
    List<RiseForecast> doughs = new ArrayList<>();
    for (double celsius : new double[] {20, 24, 28}) {
      for (double starter : new double[] {10, 20}) {
        DoughFormula formula =
            DoughFormula.builder()
                .starterShare(StarterShare.ofAddedFlour(Share.ofPercent(starter)))
                .build();
        doughs.add(
            forecaster.forecast(formula, DoughTemperature.steady(Temperature.ofCelsius(celsius))));
      }
    }
    lesson =
        new PhoneLesson(
            "<b>Warmth</b>",
            List.of(
                new PhoneLesson.Axis(PhoneLesson.Thing.DOUGH_TEMP, 1, 3),
                new PhoneLesson.Axis(PhoneLesson.Thing.STARTER, 1, 2)),
            doughs,
            List.of(HALF, Rise.ofPercent(100)),
            HALF,
            Optional.empty());
  }

  @AfterEach
  void close() {
    phone.close();
  }

  private String opened(Words words) {
    String html = PhonePage.of(lesson, words).html();
    phone.openStill("l.html", html);
    return html;
  }

  private void slide(int number, int value) {
    phone.run(
        "(() => { const s = document.querySelectorAll('input[type=range]')["
            + number
            + "]; s.value = "
            + value
            + "; s.dispatchEvent(new Event('input')); })()");
  }

  private static double likely(int dough) {
    return lesson.doughs().get(dough).hoursToRise(HALF).likely().orElseThrow();
  }

  @Test
  void slidersShowOneDoughBesideTheOneAsGiven() {
    opened(ENGLISH);
    assertThat(phone.text("h1")).isEqualTo("<b>Warmth</b>");
    assertThat(phone.text(".answer"))
        .startsWith("Risen 50% about " + ENGLISH.hours(likely(3)) + " after mixing.");
    assertThat(phone.text(".compare")).isEqualTo("This is the dough as given.");
    slide(0, 0);
    slide(1, 0);
    assertThat(phone.text(".answer"))
        .startsWith("Risen 50% about " + ENGLISH.hours(likely(0)) + " after mixing.");
    assertThat(phone.text(".compare"))
        .isEqualTo(ENGLISH.hours(likely(0) - likely(3)) + " later than the dough as given.");
    assertThat(phone.texts("tbody td.likely").get(0)).isEqualTo(narrow(likely(0)));
    assertThat(phone.texts("tbody td.as-given").get(0)).isEqualTo(narrow(likely(3)));
    assertThat(phone.attribute("input", "aria-valuetext")).isEqualTo(ENGLISH.temperature(20));
    assertThat(phone.texts(".slider .value")).containsExactly(ENGLISH.temperature(20), "10%");
    assertThat(phone.page().querySelectorAll(".curves polyline")).hasSize(2);
    slide(0, 2);
    slide(1, 1);
    assertThat(phone.text(".compare")).endsWith("sooner than the dough as given.");
    phone.click(".back");
    assertThat(phone.text(".compare")).isEqualTo("This is the dough as given.");
  }

  /** In a column minutes may stand under hours. */
  private static String narrow(double hours) {
    return ENGLISH.hours(hours).replace("h\u00a0", "h ");
  }

  /** What is drawn at an hour is the likely height that the forecast gives there. */
  @Test
  void curvesAreThoseOfTheForecast() {
    opened(ENGLISH);
    double end = Double.parseDouble(phone.attribute("article", "data-hours"));
    for (int dough : new int[] {0, 3, 5}) {
      double drawn = Double.parseDouble(phone.run("lessons[0].cells[" + dough + "].curves[1][12]"));
      double there = lesson.doughs().get(dough).likelyPercentAt(end * 12 / 48);
      assertThat(drawn).isBetween(there - 2, there + 2);
    }
  }

  @ParameterizedTest
  @EnumSource
  void everyLanguageOpensWithLabels(Language language) {
    Words words = Words.in(language);
    String html = opened(words);
    slide(0, 2);
    assertThat(phone.page().asNormalizedText()).doesNotContain("undefined", "NaN", "{");
    assertThat(phone.text(".compare"))
        .isEqualTo(
            words.say("phone.lesson.sooner", Map.of("hours", words.hours(likely(3) - likely(5)))));
    for (DomNode slider : phone.page().querySelectorAll("input")) {
      assertThat(slider.getParentNode().getNodeName()).isEqualTo("label");
      assertThat(((DomElement) slider).getAttribute("aria-valuetext")).isNotBlank();
    }
    assertThat(html).contains("default-src 'none'").doesNotContain("innerHTML", "eval(");
    assertThat(html.getBytes(StandardCharsets.UTF_8)).hasSizeLessThan(400_000);
  }
}
