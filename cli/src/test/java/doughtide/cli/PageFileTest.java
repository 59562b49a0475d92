package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.htmlunit.BrowserVersion;
import org.htmlunit.WebClient;
import org.htmlunit.html.DomElement;
import org.htmlunit.html.DomNode;
import org.htmlunit.html.HtmlPage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page that a command writes says what the command says. */
class PageFileTest {

  private static final String NIGHT =
      "rise --dough-temp 25C --mixed-at 2027-03-06T09:30 --zone Europe/Berlin --members 64 --page"
          + " x.html"
          + " --cold 4C --bake-at 07:00";

  private static final Words ENGLISH = Words.in(Language.ENGLISH);

  @TempDir Path folder;

  private CliRun run(String call, String... more) {
    List<String> words = new ArrayList<>(List.of(call.split(" ")));
    words.addAll(List.of(more));
    return CliRun.in(TestEnvironment.in(folder), words.toArray(String[]::new));
  }

  private HtmlPage opened(WebClient client) throws IOException {
    return client.loadHtmlCodeIntoCurrentWindow(Files.readString(folder.resolve("x.html")));
  }

  private static void assertSame(DomNode row, String end, JsonAnswer json, String path) {
    String there = ((DomElement) row).getAttribute("data-" + end.toLowerCase(Locale.ROOT));
    String said = json.text(path + ".hours" + end);
    if (there.isEmpty()) {
      assertThat(said).isEqualTo("null");
    } else {
      assertThat(Double.parseDouble(there)).isCloseTo(Double.parseDouble(said), within(0.0006));
    }
  }

  private static final List<String> ENDS = List.of("Early", "Likely", "Late");

  private static void assertSame(HtmlPage page, String event, JsonAnswer json, String path) {
    DomNode row = page.querySelector("tr[data-event='" + event + "']");
    assertSame(row, json, path);
    ZonedDateTime zero = zero(page.querySelector("article"));
    for (String end : ENDS) {
      String cell = row.querySelector("td." + end.toLowerCase(Locale.ROOT)).getTextContent();
      assertThat(cell).isEqualTo(shown(zero, json.text(path + ".hours" + end)));
    }
  }

  private static void assertSame(DomNode row, JsonAnswer json, String path) {
    ENDS.forEach(end -> assertSame(row, end, json, path));
  }

  /** Of a plan the likely hour is that of its step: near the jar's, when there are hands. */
  private static void assertPlanned(DomNode row, JsonAnswer json, String jar) {
    assertSame(row, "Early", json, jar);
    assertSame(row, "Late", json, jar);
    double planned = Double.parseDouble(((DomElement) row).getAttribute("data-likely"));
    assertThat(planned).isCloseTo(json.number(jar + ".hoursLikely"), within(1.0 / 12));
  }

  private static ZonedDateTime zero(DomNode article) {
    long epoch = Long.parseLong(((DomElement) article).getAttribute("data-mixed"));
    return Instant.ofEpochSecond(epoch).atZone(ZoneId.of("Europe/Berlin"));
  }

  /** As the page tells hours that the command gives. */
  private static String shown(ZonedDateTime zero, String hours) {
    if (hours.equals("null")) {
      return "–";
    }
    ZonedDateTime time = zero.plusSeconds(Math.round(Double.parseDouble(hours) * 3600));
    return Words.rounded(time).toLocalDate().equals(zero.toLocalDate())
        ? ENGLISH.clock(time)
        : ENGLISH.dayAndClock(time);
  }

  /** Twenty doughs, of which two are there before the early hour, ten before the likely one. */
  private static void assertDots(DomNode article, JsonAnswer json, String path) {
    double[] dots =
        Stream.of(((DomElement) article).getAttribute("data-dots").split(" "))
            .mapToDouble(Double::parseDouble)
            .toArray();
    for (int end = 0; end < 3; end++) {
      int before = new int[] {2, 10, 18}[end];
      double hours = json.number(path + ".hours" + ENDS.get(end));
      assertThat(dots[before - 1]).isLessThanOrEqualTo(hours + 0.0001);
      assertThat(dots[before]).isGreaterThanOrEqualTo(hours - 0.0001);
    }
  }

  /** A step of the page at an hour that the command gives, with its clock. */
  private static void assertStep(HtmlPage page, JsonAnswer json, String path) {
    double hours = json.number(path);
    ZonedDateTime zero = zero(page.querySelector("article"));
    assertThat(page.querySelectorAll("[data-step]"))
        .as(path)
        .anySatisfy(
            step -> {
              double there = Double.parseDouble(((DomElement) step).getAttribute("data-hours"));
              assertThat(there).isCloseTo(hours, within(0.0006));
              assertThat(step.querySelector(".clock").getTextContent())
                  .contains(shown(zero, json.text(path)));
            });
  }

  /** What to do at a height of the jar: every hour and height that the command gives. */
  private static void assertRule(HtmlPage page, JsonAnswer json) {
    List<String> lines =
        page.querySelectorAll(".rule li").stream().map(DomNode::getTextContent).toList();
    ZonedDateTime zero = zero(page.querySelector("article"));
    int size = (int) json.number("shape.jarRule.size");
    assertThat(size).isPositive();
    for (int i = 0; i < size; i++) {
      String at = "shape.jarRule." + i;
      String line =
          lines.stream()
              .filter(each -> each.startsWith("At " + shown(zero, json.text(at + ".lookHours"))))
              .findFirst()
              .orElseThrow();
      double jar = json.number(at + ".jarPercent"); // to a hundredth: 30.5 may be 30.498
      double wait = json.number(at + ".waitHours");
      String then = wait == 0 ? "% or more" : "%: wait " + ENGLISH.hours(wait);
      assertThat(line)
          .containsAnyOf(Math.round(jar - 0.005) + then, Math.round(jar + 0.005) + then);
    }
  }

  @Test
  void everyHourIsThatOfTheAnswer() throws IOException {
    JsonAnswer json = JsonAnswer.of(run(NIGHT, "--format", "json"));
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      assertShapeAndRises(page, json);
      assertSame(page, "past", json, "pastBest");
      assertDots(page.querySelector("article"), json, "shape");
      assertRule(page, json);
      for (int i = 0; i < json.number("strength.steps.size"); i++) {
        assertStep(page, json, "strength.steps." + i + ".hours");
      }
      assertStep(page, json, "shape.hoursLikely");
      assertStep(page, json, "cold.intoColdHours");
      assertStep(page, json, "cold.ovenHours");
      assertThat(page.querySelector(".answer").getTextContent())
          .contains(" " + Math.round(json.number("shape.risePercent")) + "%");
    }
  }

  /** A page for a class: a list that leads to each dough, first names only, the plan's numbers. */
  @Test
  void aClassHasAListOfItsDoughs() throws IOException {
    Files.writeString(
        folder.resolve("class.csv"),
        "name,loaves,starter,dough_temp\n"
            + "Anna Meer,1,20%,24C\n"
            + "Ben,1,20%,24C\n"
            + "Anna Berg,1,20%,25C\n");
    String call =
        "class-day class.csv --ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00 --cold 4C"
            + " --hands 2 --oven-capacity 4 --zone Europe/Berlin --page x.html --format json";
    JsonAnswer json = JsonAnswer.of(run(call));
    assertThat(Files.size(folder.resolve("x.html"))).isLessThan(1_500_000);
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      assertThat(page.querySelectorAll("article h2.name").stream().map(DomNode::getTextContent))
          .containsExactly("Anna 1", "Ben", "Anna 3");
      assertThat(page.asXml()).doesNotContain("Meer", "Berg");
      List<DomNode> rows = List.copyOf(page.querySelectorAll("tr[data-event='shape']"));
      assertThat(rows).hasSize(3);
      assertThat(page.querySelectorAll("nav a")).hasSize(3);
      for (DomNode article : page.querySelectorAll("article")) {
        String factors = ((DomElement) article).getAttribute("data-factors");
        assertThat(Base64.getDecoder().decode(factors)).hasSize(2 * 128); // one a member
        assertThat(article.querySelectorAll(".dots circle")).hasSize(20);
        assertThat(article.querySelector(".chart").getTextContent())
            .contains("when it is to be shaped")
            .doesNotContain("has risen 50%");
      }
      List<DomNode> articles = List.copyOf(page.querySelectorAll("article"));
      for (int i = 0; i < 3; i++) {
        assertPlanned(rows.get(i), json, "plans.0.doughs." + i + ".jar");
        assertDots(articles.get(i), json, "plans.0.doughs." + i + ".jar");
      }
      long feeds =
          page.querySelectorAll("#d1 [data-step]").stream()
              .filter(step -> step.getTextContent().contains("feed the starter"))
              .count();
      assertThat(feeds).isEqualTo(1);
    }
  }

  /** A dough in hand goes on with its readings. */
  @Test
  void aDoughInHandTakesItsReadingsWithIt() throws IOException {
    Files.writeString(
        folder.resolve("saturday.txt"),
        "starter: 20%\nhydration: 72%\ndough temp: 25C\nmixed at: 2027-03-06T05:30\n"
            + "zone: Europe/London\n\ntime,rise %\n07:30,9\n08:00,14\n");
    assertThat(run("now saturday --cold 4C --bake-at 19:00 --page x.html").code()).isZero();
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      assertThat(page.querySelectorAll(".readings li span").stream().map(DomNode::getTextContent))
          .containsExactly("07:30 \u00b7 9%", "08:00 \u00b7 14%");
      assertThat(page.querySelector(".answer").getTextContent()).startsWith("Shape about");
    }
    assertThat(run("now saturday --language de").out()).contains("nach dem Mischen");
    String readings = "rise --readings saturday.txt --page y.html --title Sunday";
    assertThat(run(readings).out()).contains("Page: y.html");
  }

  /** At load it weights no members of its own: hours, the jar, the next look and the chart. */
  @Test
  void aDoughInHandIsToldAsTheCommandTellsIt() throws IOException {
    Files.writeString(
        folder.resolve("saturday.txt"),
        "starter: 20%\nhydration: 72%\ndough temp: 25C\nmixed at: 2027-03-06T14:00\n"
            + "zone: Europe/Berlin\n\ntime,rise %\n16:00,3\n17:30,9\n18:30,15\n");
    String call = "now saturday --now 18:30 --cold 4C --bake-at 07:00 --page x.html --format json";
    JsonAnswer json = JsonAnswer.of(run(call));
    String jar = Math.round(json.number("shape.risePercent")) + "%";
    String shapeAt = fives(json.text("shape.clockLikely"));
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      assertShapeAndRises(page, json);
      assertThat(page.querySelector(".answer").getTextContent())
          .contains(shapeAt, " " + jar, fives(json.text("shape.clockEarly")));
      assertThat(page.querySelector("tr[data-event='shape'] .likely").getTextContent())
          .isEqualTo(shapeAt);
      DomElement article = page.querySelector("article");
      assertThat(Double.parseDouble(article.getAttribute("data-look")))
          .isCloseTo(json.number("nextLookHours"), within(0.0006));
      assertThat(page.querySelector(".look").getTextContent())
          .startsWith(ENGLISH.hours(-json.number("aheadHours")) + " behind");
      assertDots(article, json, "shape");
      assertRule(page, json);
      assertThat(page.querySelectorAll(".chart > svg")).hasSize(2);
      assertThat(page.querySelectorAll(".chart > svg"))
          .allSatisfy(svg -> assertThat(svg.getTextContent()).contains(shapeAt).contains(jar));
    }
    run("rise --readings saturday.txt --cold 4C --bake-at 07:00 --chart c.svg");
    assertThat(Files.readString(folder.resolve("c.svg"))).contains(shapeAt, jar);
  }

  /** Of a starter that is fed: when it is ripe and the hour to plan for. */
  @Test
  void aFedStarterIsToldAsTheCommandTellsIt() throws IOException {
    String call =
        "feed --ratio 1:5:5 --starter-temp 22C --fed-at 2027-03-05T21:30 --zone Europe/Berlin"
            + " --amount 120g --page x.html";
    JsonAnswer json = JsonAnswer.of(run(call + " --format json"));
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      assertSame(page, "doubled", json, "doubled");
      assertSame(page, "ripe", json, "ripe");
      assertSame(page, "falls", json, "beginsToFall");
      assertSame(page, "fallen", json, "fallen");
      assertDots(page.querySelector("article"), json, "ripe");
      assertStep(page, json, "ripe.hoursLikely");
      assertStep(page, json, "readyHours");
      assertStep(page, json, "beginsToFall.hoursLikely");
      assertThat(page.querySelector(".answer").getTextContent())
          .startsWith("Plan to use it about ")
          .contains(fives(json.text("readyAt")), fives(json.text("ripe.clockLikely")));
    }
    assertThat(Files.size(folder.resolve("x.html"))).isLessThan(400_000);
    assertThat(run("feed --ratio 1:5:5 --starter-temp 22C --page y.html").refusal())
        .contains("--fed-at 21:30");
    assertThat(run(call + " --overwrite").out()).contains("Page: x.html");
  }

  /** A planned day: each step at its clock time, the jar and the rise at which to shape. */
  @Test
  void aPlannedDayIsToldAsTheCommandTellsIt() throws IOException {
    JsonAnswer json =
        JsonAnswer.of(
            run(
                "bake-day --ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00 --cold 4C"
                    + " --dough-temp 25C --zone Europe/Berlin --page x.html --format json"));
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      String jar = "plans.0.doughs.0.jar";
      DomNode article = page.querySelector("article");
      DomNode row = page.querySelector("tr[data-event='shape']");
      assertPlanned(row, json, jar);
      assertDots(article, json, jar);
      assertThat(article.querySelector(".answer").getTextContent())
          .contains(Math.round(json.number("plans.0.doughs.0.shapeRisePercent")) + "%");
      List<DomNode> steps = List.copyOf(page.querySelectorAll("[data-step]"));
      assertThat(steps).hasSize((int) json.number("plans.0.steps.size"));
      for (int i = 0; i < steps.size(); i++) {
        String text = steps.get(i).getTextContent();
        ZonedDateTime from = ZonedDateTime.parse(json.text("plans.0.steps." + i + ".from"));
        boolean waits = json.text("plans.0.steps." + i + ".kind").equals("shape");
        assertThat(text).contains(json.text("plans.0.steps." + i + ".step"));
        assertThat(text).contains(waits ? "(" : ENGLISH.dayAndClock(from));
      }
    }
  }

  /** Each dough of a lesson has the hours that the command gives for its values. */
  @Test
  void aLessonHasTheHoursOfEachDough() throws IOException {
    String dough = "rise --dough-temp 25C --hydration 75% --members 64";
    String call = dough + " --vary dough-temp:21C,28C --vary starter:10%,30% --page x.html";
    assertThat(run(call).out()).contains("Page: x.html");
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      List<DomNode> cells = List.copyOf(page.querySelectorAll(".cells li"));
      assertThat(cells).hasSize(9);
      assertHours(cells.get(0), dough.replace("25C", "21C --starter 10%"));
      assertHours(cells.get(4), dough);
      assertHours(cells.get(8), dough.replace("25C", "28C --starter 30%"));
    }
    assertThat(run("rise --dough-temp 25C --vary starter:10%").refusal()).contains("--page x.html");
    String page = " --page y.html";
    assertThat(run("rise --dough-temp 25C --vary ratio:1:1:1" + page).refusal())
        .contains("ratio", "hydration");
    assertThat(
            run("rise --dough-temp 25C --vary starter:5% --vary prefermented:5%" + page).refusal())
        .contains("two different things");
    assertThat(run("rise --dough-temp 25C,2h:20C --vary dough-temp:20C" + page).refusal())
        .contains("--dough-temp 25C");
  }

  private static void assertShapeAndRises(HtmlPage page, JsonAnswer json) {
    assertSame(page, "shape", json, "shape");
    for (int i = 0; i < 5; i++) {
      String percent = String.valueOf(json.number("rises." + i + ".risePercent"));
      assertSame(page, "rise" + percent, json, "rises." + i);
    }
  }

  private void assertHours(DomNode cell, String call) {
    JsonAnswer json = JsonAnswer.of(run(call + " --format json"));
    String[] windows = ((DomElement) cell).getAttribute("data-windows").split(" ");
    assertThat(windows).hasSize(6);
    for (int i = 0; i < 6; i++) {
      String path = i < 5 ? "rises." + i : "pastBest";
      String[] hours = windows[i].split(",", -1);
      List<String> ends = List.of("Early", "Likely", "Late");
      for (int end = 0; end < 3; end++) {
        String said = json.text(path + ".hours" + ends.get(end));
        if (hours[end].isEmpty()) {
          assertThat(said).isEqualTo("null");
        } else {
          assertThat(Double.parseDouble(hours[end]))
              .isCloseTo(Double.parseDouble(said), within(0.0006));
        }
      }
    }
  }

  /** With a night in the cold each dough has the hour to shape that the command gives. */
  @Test
  void aLessonWithALoafHasTheShapePointOfEachDough() throws IOException {
    String dough = "rise --dough-temp 25C --cold 4C --hold 12h --members 64";
    assertThat(run(dough + " --vary dough-temp:21C,28C --page x.html").out())
        .contains("Page: x.html");
    try (WebClient client = new WebClient(BrowserVersion.CHROME)) {
      HtmlPage page = opened(client);
      List<DomNode> cells = List.copyOf(page.querySelectorAll(".cells li"));
      assertThat(cells).hasSize(3);
      for (int i = 0; i < 3; i++) {
        String call = dough.replace("25C", List.of("21C", "25C", "28C").get(i));
        JsonAnswer json = JsonAnswer.of(run(call + " --format json"));
        String[] shape = ((DomElement) cells.get(i)).getAttribute("data-windows").split("[ ,]");
        for (int end = 0; end < 3; end++) {
          assertThat(Double.parseDouble(shape[end]))
              .isCloseTo(json.number("shape.hours" + ENDS.get(end)), within(0.0006));
        }
        assertThat(Double.parseDouble(((DomElement) cells.get(i)).getAttribute("data-jar")))
            .isCloseTo(json.number("shape.risePercent"), within(0.006));
      }
      assertThat(page.querySelector(".answer").getTextContent()).startsWith("Shape about ");
      assertThat(page.querySelector(".night").getTextContent()).contains("night in the cold");
    }
    String many = " --vary dough-temp:18C,19C,20C,21C,22C,23C --vary starter:5%,10%,15%,25%,30%";
    assertThat(run(dough + many + " --page y.html").refusal()).contains("2…25");
  }

  /** The clock of a time as people are told it, to five minutes. */
  private static String fives(String clock) {
    ZonedDateTime time = ZonedDateTime.parse(clock);
    return ENGLISH.clock(time);
  }

  @Test
  void theUsualPageIsSmallerThan400Kilobytes() throws IOException {
    String usual = NIGHT.replace(" --members 64", "");
    assertThat(run(usual).out()).contains("Page: x.html (send it as a file; it needs no network)");
    byte[] page = Files.readString(folder.resolve("x.html")).getBytes(StandardCharsets.UTF_8);
    assertThat(page).hasSizeLessThan(400_000);
  }

  @Test
  void refusesWhatMakesNoPage() {
    assertThat(run("rise --dough-temp 25C --page x.html").refusal()).contains("--mixed-at 09:30");
    assertThat(run("rise --dough-temp 25C --mixed-at 09:30 --page x.txt").refusal())
        .contains("must end in .html");
    assertThat(run("rise --dough-temp 25C --language de").refusal()).contains("--language");
    CliRun hot = run("rise --dough-temp 40C --mixed-at 09:30 --page x.html");
    assertThat(hot.err()).contains("no page is written");
    assertThat(folder.resolve("x.html")).doesNotExist();
  }
}
