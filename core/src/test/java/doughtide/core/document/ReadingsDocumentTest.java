package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.document.ReadingsDocument.Setting;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Reading;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import java.time.ZonedDateTime;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Invented doughs. */
class ReadingsDocumentTest {

  @Test
  void whatIsWrittenIsReadBack() {
    DoughFormula formula =
        DoughFormula.builder()
            .flour(Catalogue.standard().flour("flour", "white:80%,wholemeal rye:20%"))
            .hydration(Share.ofPercent(74.5))
            .build();
    formula = formula.toBuilder().starter(formula.starter().in(StarterCondition.PAST_BEST)).build();
    List<Reading> readings =
        List.of(
            Reading.ofRise(1.5, Rise.ofPercent(4.25)).withCelsius(24.5),
            Reading.ofRise(3, Rise.ofPercent(22)).withPh(4.9));
    Bake bake =
        Bake.measured("Quayside", formula, Optional.of(Temperature.ofCelsius(25)), readings);
    ZonedDateTime mixed = ZonedDateTime.parse("2027-03-06T09:30:00+01:00[Europe/Berlin]");

    String text = ReadingsDocument.text(bake, Optional.of(mixed));
    ReadingsDocument read = ReadingsDocument.read(text.lines().iterator(), Setting.of("Quayside"));

    assertThat(read.bake().readings()).isEqualTo(readings);
    assertThat(read.bake().formula().flour()).isEqualTo(formula.flour());
    assertThat(read.bake().formula().starter()).isEqualTo(formula.starter());
    assertThat(read.bake().formula().hydration()).isEqualTo(formula.hydration());
    assertThat(read.bake().formula().prefermentedFlour())
        .isCloseTo(formula.prefermentedFlour(), within(1e-6));
    assertThat(read.mixed()).contains(mixed);
    assertThat(read.assumed()).isEmpty();
    assertThat(read.refused().count()).isZero();
  }

  @Test
  void whatTheHeadDoesNotSayIsAssumedAndTold() {
    String text = "starter: 20%\ndough temp: 25C\nmixed at: 09:30\ntime;rise %\n11:30;12";
    ReadingsDocument read = ReadingsDocument.read(text.lines().iterator(), Setting.of("Saturday"));
    assertThat(read.assumed()).containsExactly("hydration", "flour", "salt");
    assertThat(read.bake().lastHours()).isEqualTo(2);
  }

  @Test
  void aFedStarterIsSaidByItsFeed() {
    String head = "feed: 2:5:4\ndough temp: 25C\noccasion: Friday  Evening\nmixed at: 18:00\n";
    String table = "time;rise %\n20:00;50";
    ReadingsDocument read =
        ReadingsDocument.read((head + table).lines().iterator(), Setting.of("jar"));
    Starter white = Starter.ripe();
    assertThat(read.bake().formula()).isEqualTo(DoughFormula.feed(white, 2, 5, 4, white.flour()));
    assertThat(read.bake().occasion()).isEqualTo("friday evening");
    assertThat(read.assumed()).containsExactly("flour");
    String written = ReadingsDocument.text(read.bake(), read.mixed());
    assertThat(
            ReadingsDocument.read(written.lines().iterator(), Setting.of("jar")).bake().occasion())
        .isEqualTo("friday evening");
    assertThatThrownBy(
            () ->
                ReadingsDocument.read(
                    (head + "hydration: 70%\n" + table).lines().iterator(), Setting.of("jar")))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("hydration: is said by the feed already");
  }

  @Test
  void wordsOfAnotherLanguageNameKeysAndColumns() {
    Vocabulary german =
        (kind, word) ->
            switch (kind + " " + word) {
              case "KEY teigtemperatur" -> Optional.of("dough-temp");
              case "KEY mehl" -> Optional.of("flour");
              case "FLOUR roggen" -> Optional.of("rye");
              case "COLUMN zeit" -> Optional.of("time");
              case "COLUMN trieb" -> Optional.of("rise");
              default -> Optional.empty();
            };
    Setting usual = Setting.of("Samstag");
    Setting setting =
        new Setting("Samstag", usual.zone(), usual.catalogue().in(german), usual.records());
    String text = "Mehl: Roggen\nTeigtemperatur: 25C\nZeit;Trieb %\n2h;12,5\n";
    ReadingsDocument read = ReadingsDocument.read(text.lines().iterator(), setting);
    assertThat(read.bake().formula().flour().name()).isEqualTo("rye");
    assertThat(read.bake().readings()).containsExactly(Reading.ofRise(2, Rise.ofPercent(12.5)));
  }

  @Test
  void manyLinesOfALoggerAreReadOneByOne() {
    Iterator<String> lines =
        IntStream.range(0, 200_001)
            .mapToObj(i -> i == 0 ? "hours;temperature C" : Checks.plain(i / 10_000.0) + ";25,5")
            .iterator();
    LoggerDocument logger = LoggerDocument.read(lines, Optional.empty(), Vocabulary.KEYS_ONLY);
    assertThat(logger.readings().count()).isEqualTo(200_000);
    assertThat(logger.readings().trace().celsius(10)).isEqualTo(25.5);
    assertThat(lines.hasNext()).isFalse();
  }

  private static List<Double> hours(String... times) {
    String table = String.join(";10%\n", times) + ";10%";
    return ReadingsDocument.read(
            ("dough temp: 25C\nmixed at: 9.30\ntime;rise\n" + table).lines().iterator(),
            ReadingsDocument.Setting.of("Saturday"))
        .bake()
        .readings()
        .stream()
        .map(Reading::hours)
        .toList();
  }

  @Test
  void timesAreReadAsTheyAreWrittenAndAsThoseBeforeThem() {
    assertThat(hours("10.30", "1:30 pm", "14h30", "18")).containsExactly(1.0, 4.0, 5.0, 8.5);
    assertThat(hours("60min", "2h30", "13h30")).containsExactly(1.0, 2.5, 13.5);
    assertThat(hours("2027-03-06 10.30", "2027-03-06T11:30")).containsExactly(1.0, 2.0);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "13h30 | can be read two ways: write 13:30 or, since mixing, 810min",
        "13 | can be read two ways: write 13:00 or, since mixing, 13h"
      })
  void aFirstTimeWithTwoReadingsIsRefusedWithBoth(String time, String both) {
    ReadingsDocument read =
        ReadingsDocument.read(
            ("dough temp: 25C\nmixed at: 09:30\ntime;rise\n" + time + ";10%").lines().iterator(),
            ReadingsDocument.Setting.of("Saturday"));
    assertThat(read.refused().first().get(0)).hasMessageContaining(both);
  }

  /** A jar of 50 mm at the start that stands at 75 mm has risen by half, however that is told. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "height mm | 75",
        "height mm | 75.0",
        "height cm | 7.5",
        "height | 7,5 cm",
        "height | 75mm",
        "rise mm | 25",
        "rise cm | 2.5",
        "rise | 25 mm",
        "rise % | 50",
        "rise % | 50%",
      })
  void aHeightIsToldInManyWays(String column, String cell) {
    String text = "dough temp: 25C\nstart height: 50 mm\ntime;" + column + "\n2h;" + cell;
    Rise rise =
        ReadingsDocument.read(text.lines().iterator(), Setting.of("Saturday"))
            .bake()
            .readings()
            .get(0)
            .rise()
            .orElseThrow();

    assertThat(rise.percent()).isCloseTo(50, within(1e-9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "height | 75 | height 75 needs a unit: write 75 mm",
        "height mm | 3in | height 3in needs a unit",
        "rise % | fifty | fifty",
        "rise % | 5.0.0 | 5.0.0",
        "rise % | . | .",
        "rise %;temperature C | 5;x | x",
        "rise %;pH | 5;9 | outside 3…7.5",
        "rise % |  | the line tells neither rise nor temperature nor pH",
        "rise % | 5%;6 | the line has more cells than the heading",
      })
  void aCellThatTellsNothingIsRefused(String column, String cell, String part) {
    String text =
        "dough temp: 25C\nstart height: 50 mm\ntime;"
            + column
            + "\n1h;"
            + (cell == null ? "" : cell);
    assertThat(
            ReadingsDocument.read(text.lines().iterator(), Setting.of("Saturday"))
                .refused()
                .first()
                .get(0))
        .hasMessageContaining(part);
  }

  @Test
  void heightsNeedTheOneAtTheStart() {
    String text = "dough temp: 25C\ntime;height mm\n2h;75";
    assertThat(
            ReadingsDocument.read(text.lines().iterator(), Setting.of("Saturday"))
                .refused()
                .first()
                .get(0))
        .hasMessageContaining("heights need the starting height");
  }

  /** Of 1,200 readings, one a minute, each quarter of an hour keeps its mean. */
  @Test
  void aLoggersReadingsAreMeansOfQuarterHours() {
    StringBuilder text = new StringBuilder("dough temp: 25C\ntime;rise %;temperature C;pH\n");
    for (int i = 0; i < 1200; i++) {
      text.append(Checks.plain(i / 60.0 + 1e-6)).append("h;").append(i / 10.0).append(";");
      text.append(i % 2 == 0 ? "24;5.0" : ";").append('\n');
    }
    ReadingsDocument read =
        ReadingsDocument.read(text.toString().lines().iterator(), Setting.of("logger"));

    assertThat(read.bake().readings()).hasSize(80);
    Reading second = read.bake().readings().get(1);
    assertThat(second.hours()).isCloseTo(22 / 60.0, within(1e-5));
    assertThat(second.rise().orElseThrow().percent()).isCloseTo(2.2, within(1e-9));
    assertThat(second.celsius()).hasValue(24);
    assertThat(second.ph()).hasValue(5);
  }

  /** Four hundred are as many as a person may have taken. */
  @Test
  void aPersonsReadingsStayAsTheyAre() {
    StringBuilder text = new StringBuilder("dough temp: 25C\ntime;rise %\n");
    for (int i = 0; i < 400; i++) {
      text.append(Checks.plain(i / 50.0)).append("h;").append(i / 10.0).append('\n');
    }
    String few = text.toString();
    assertThat(ReadingsDocument.read(few.lines().iterator(), Setting.of("a")).bake().readings())
        .hasSize(400);
    String more = few + "8h;40";
    assertThat(ReadingsDocument.read(more.lines().iterator(), Setting.of("a")).bake().readings())
        .hasSize(33);
  }

  /** 850 g of dough of 70 % water and 2 % salt hold 494 g of flour, 50 g of them in the starter. */
  @Test
  void aStarterInGramsIsAShareOfADoughWhoseMassIsKnown() {
    String head = "starter: 100g\ndough temp: 25C\nmixed at: 9.30\n";
    String table = "time;rise\n11:30;10%";
    ReadingsDocument read =
        ReadingsDocument.read(
            ("dough mass: 850g\nroom: 20C\n" + head + table).lines().iterator(),
            ReadingsDocument.Setting.of("Saturday"));

    assertThat(read.bake().formula().starterOfAddedFlour())
        .isCloseTo(100 / (850 / 1.72 - 50), within(1e-9));
    assertThatThrownBy(
            () ->
                ReadingsDocument.read(
                    (head + table).lines().iterator(), ReadingsDocument.Setting.of("Saturday")))
        .hasMessageContaining("line 1: starter: 100g is a mass, and the flour is not known");
  }
}
