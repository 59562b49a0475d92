package doughtide.core.embedding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.FlourClass;
import doughtide.core.flourtrial.Grade;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.util.List;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the library says does not depend on where the program around it runs. */
class PlaceTest {

  /** Arabic digits, the Turkish i, a decimal comma, a calendar of its own; zones far apart. */
  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({
    "ar-EG-u-nu-arab, Africa/Cairo",
    "tr-TR, Pacific/Kiritimati",
    "de-DE, Europe/Berlin",
    "th-TH-u-ca-buddhist-nu-thai, Pacific/Pago_Pago"
  })
  void neitherLocaleNorZoneChangesAnAnswer(String locale, String zone) {
    Locale locally = Locale.getDefault();
    TimeZone here = TimeZone.getDefault();
    List<String> said = words();
    try {
      Locale.setDefault(Locale.forLanguageTag(locale));
      TimeZone.setDefault(TimeZone.getTimeZone(zone));
      assertThat(words()).isEqualTo(said);
    } finally {
      Locale.setDefault(locally);
      TimeZone.setDefault(here);
    }
  }

  @Test
  void whatIsComparedHoldsNumbersAndWords() {
    assertThat(String.join("\n", words()))
        .contains("250 °C", "9.09", "THIN_DATA_COLD", "WHOLEMEAL_WHEAT", "TOO_STIFF");
  }

  /** Numbers, warnings, refusals and names that are looked up. */
  private static List<String> words() {
    DoughFormula dough = DoughFormula.builder().build();
    RiseForecast cool =
        RiseForecaster.standard()
            .withMembers(8)
            .forecast(dough, DoughTemperature.steady(Temperature.ofCelsius(9.5)));
    return List.of(
        String.valueOf(100 * dough.prefermentedFlour()),
        cool.hoursToRise(Rise.ofPercent(50)).toString(),
        cool.warnings().toString(),
        String.valueOf(catchThrowable(() -> Temperature.ofCelsius(2500.25))),
        String.valueOf(catchThrowable(() -> DoughTemperature.steady(Temperature.ofCelsius(250)))),
        FlourClass.named("WHOLEMEAL WHEAT").name(),
        Grade.named("STIFF").name());
  }
}
