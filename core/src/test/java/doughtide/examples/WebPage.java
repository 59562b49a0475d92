package doughtide.examples;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import doughtide.core.dough.DoughFormula;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.rise.DoughTemperature;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.OptionalDouble;

/** A whole application in one file: GET /half?celsius=25 tells when the dough has risen by half. */
public final class WebPage {
  private static final RiseForecaster FORECASTER = RiseForecaster.standard();

  private WebPage() {}

  /**
   * Starts it on this computer only.
   *
   * @param port 0 for any that is free
   */
  public static HttpServer start(int port) throws IOException {
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 0);
    server.createContext("/half", WebPage::answer);
    server.start();
    return server;
  }

  private static void answer(HttpExchange exchange) throws IOException {
    try {
      String query = String.valueOf(exchange.getRequestURI().getQuery());
      double celsius = Double.parseDouble(query.replaceFirst("^celsius=", ""));
      send(exchange, 200, half(celsius));
    } catch (NumberFormatException e) {
      send(exchange, 400, "give a number: /half?celsius=25");
    } catch (InputException e) {
      send(exchange, 400, e.getMessage());
    }
  }

  private static String half(double celsius) {
    TimeWindow half =
        FORECASTER
            .forecast(
                DoughFormula.builder().build(),
                DoughTemperature.steady(Temperature.ofCelsius(celsius)))
            .hoursToRise(Rise.ofPercent(50));
    return hours(half.early()) + " to " + hours(half.late()) + " h, likely " + hours(half.likely());
  }

  private static String hours(OptionalDouble hours) {
    return hours.isEmpty() ? "never" : String.format(Locale.ROOT, "%.1f", hours.getAsDouble());
  }

  private static void send(HttpExchange exchange, int code, String text) throws IOException {
    byte[] bytes = (text + "\n").getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().set("Content-Type", "text/plain; charset=utf-8");
    exchange.sendResponseHeaders(code, bytes.length);
    exchange.getResponseBody().write(bytes);
    exchange.close();
  }
}
