package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import doughtide.core.dough.Composition;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import doughtide.core.rise.RiseModel;
import doughtide.core.rise.RiseParameters;
import doughtide.core.thermal.TemperatureTrace;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What an application that embeds the library writes. */
class ExamplesTest {

  @Test
  void anApplicationInOneFileAnswersOverHttp() throws Exception {
    HttpServer server = WebPage.start(0);
    try {
      assertThat(get(server, "/half?celsius=25").body()).matches("\\d\\.\\d to .* h, likely .*\n");
      assertThat(get(server, "/half?celsius=250").statusCode()).isEqualTo(400);
      assertThat(get(server, "/half?celsius=warm").body()).startsWith("give a number");
    } finally {
      server.stop(0);
    }
  }

  private static HttpResponse<String> get(HttpServer server, String path) throws Exception {
    String host = InetAddress.getLoopbackAddress().getHostAddress();
    URI uri = URI.create("http://" + host + ":" + server.getAddress().getPort() + path);
    return HttpClient.newHttpClient()
        .send(HttpRequest.newBuilder(uri).build(), HttpResponse.BodyHandlers.ofString());
  }

  @Test
  void aRateCurveOfOnesOwn() {
    LinearCurve curve = new LinearCurve();
    RiseModel model =
        RiseModel.of(
                DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(20)))
            .with(
                RiseParameters.standard()
                    .with(new RiseParameters.RateCurves("straight", curve, curve)));
    double cool = model.run(48).hoursToRise(Rise.ofPercent(50)).orElseThrow();
    double warm =
        model
            .with(DoughTemperature.steady(Temperature.ofCelsius(28)))
            .run(48)
            .hoursToRise(Rise.ofPercent(50))
            .orElseThrow();
    assertThat(warm).isLessThan(cool);
  }

  @Test
  void aFlourOfOnesOwn() {
    Flour flour =
        new Flour(
            "mill's own",
            Composition.ofParts(0.125, 0.015, 0.04, 0.008, 0.14),
            0.55,
            1,
            Rise.ofPercent(60),
            List.of("wheat"));
    DoughFormula dough = DoughFormula.builder().flour(flour).hydration(Share.ofPercent(75)).build();
    assertThat(
            RiseModel.of(dough, DoughTemperature.steady(Temperature.ofCelsius(25)))
                .run(12)
                .hoursToRise(Rise.ofPercent(30)))
        .isPresent();
  }

  @Test
  void aLoggerFeedsItsReadings() {
    List<double[]> readings = new ArrayList<>(); // hour since mixing, °C: as they come in
    for (int i = 0; i < 8; i++) {
      readings.add(new double[] {i * 0.5, 26 - i * 0.4});
    }
    TemperatureTrace trace =
        TemperatureTrace.logged(
            readings.stream().mapToDouble(each -> each[0]).toArray(),
            readings.stream().mapToDouble(each -> each[1]).toArray());
    RiseModel model =
        RiseModel.of(DoughFormula.builder().build(), DoughTemperature.following(trace));
    double logged = model.runFast(24).hoursToRise(Rise.ofPercent(50)).orElseThrow();
    double steady =
        model
            .with(DoughTemperature.steady(Temperature.ofCelsius(26)))
            .runFast(24)
            .hoursToRise(Rise.ofPercent(50))
            .orElseThrow();
    assertThat(logged).isGreaterThan(steady);
  }
}
