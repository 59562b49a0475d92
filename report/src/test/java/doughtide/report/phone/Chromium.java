package doughtide.report.phone;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** A Chromium without a window, driven through its DevTools protocol. */
final class Chromium implements AutoCloseable {

  private static final List<String> NAMES =
      List.of("chromium", "chromium-browser", "google-chrome", "google-chrome-stable");
  private static final Pattern LISTENS = Pattern.compile("ws://([0-9.]+:[0-9]+)/");
  private static final Pattern PAGE = Pattern.compile("\"webSocketDebuggerUrl\": *\"(ws:[^\"]+)\"");
  private static final int PATIENCE_SECONDS = 90;

  private final Process process;
  private final HttpClient http = HttpClient.newHttpClient();
  private final BlockingQueue<String> answers = new LinkedBlockingQueue<>();
  private final WebSocket socket;
  private int calls;

  private Chromium(Process process, Path page) throws IOException, InterruptedException {
    this.process = process;
    URI open = URI.create("http://" + host(process) + "/json/new?" + page.toUri());
    HttpRequest request =
        HttpRequest.newBuilder(open).PUT(HttpRequest.BodyPublishers.noBody()).build();
    String opened = http.send(request, HttpResponse.BodyHandlers.ofString()).body();
    Matcher url = PAGE.matcher(opened);
    if (!url.find()) {
      throw new IOException("no page was opened: " + opened);
    }
    this.socket =
        http.newWebSocketBuilder().buildAsync(URI.create(url.group(1)), new Listener()).join();
  }

  /**
   * Opens a file where there is a browser; tells in a line where there is none, or one that does
   * not start.
   */
  static Optional<Chromium> ifInstalled(Path page, Path profile) throws InterruptedException {
    Optional<Path> program = installed();
    try {
      return program.isPresent()
          ? Optional.of(open(program.get(), page, profile))
          : none("no Chromium is installed");
    } catch (IOException e) {
      return none(program.orElseThrow() + " does not start: " + e.getMessage());
    }
  }

  private static Optional<Chromium> none(String why) {
    System.out.println("The page for the telephone is not tried in a real browser: " + why);
    return Optional.empty();
  }

  private static Optional<Path> installed() {
    String path = System.getenv().getOrDefault("PATH", "");
    return Pattern.compile(java.io.File.pathSeparator)
        .splitAsStream(path)
        .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst();
  }

  private static Chromium open(Path program, Path page, Path profile)
      throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                program.toString(),
                "--headless=new",
                "--no-sandbox", // it opens files of this test alone, maybe as root
                "--disable-gpu",
                "--hide-scrollbars",
                "--remote-debugging-port=0",
                "--remote-allow-origins=*",
                "--user-data-dir=" + profile)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    try {
      Chromium browser = new Chromium(process, page);
      browser.waitUntilLoaded();
      return browser;
    } catch (IOException | RuntimeException e) {
      process.destroyForcibly();
      throw e;
    }
  }

  /** Opens another file in the same window. */
  void show(Path page) throws InterruptedException {
    call("Page.navigate", "{\"url\":\"" + page.toUri() + "\"}");
    waitUntilLoaded();
  }

  private void waitUntilLoaded() throws InterruptedException {
    for (int i = 0; i < 20 * PATIENCE_SECONDS; i++) {
      String answer =
          call(
              "Runtime.evaluate",
              "{\"expression\":\"document.readyState + typeof (window.Dough || window.Lesson)\"}");
      if (answer.contains("\"completefunction\"")) {
        return;
      }
      Thread.sleep(50);
    }
    throw new IllegalStateException("the page was not loaded");
  }

  /** A browser that says nothing is ended, and so has said nothing. */
  private static String host(Process process) throws IOException {
    AtomicBoolean listens = new AtomicBoolean();
    CompletableFuture.delayedExecutor(PATIENCE_SECONDS, TimeUnit.SECONDS)
        .execute(
            () -> {
              if (!listens.get()) {
                process.destroyForcibly();
              }
            });
    BufferedReader err =
        new BufferedReader(new InputStreamReader(process.getErrorStream(), StandardCharsets.UTF_8));
    for (String line = err.readLine(); line != null; line = err.readLine()) {
      Matcher at = LISTENS.matcher(line);
      if (at.find()) {
        listens.set(true);
        return at.group(1);
      }
    }
    throw new IOException("the browser ended before it listened");
  }

  private final class Listener implements WebSocket.Listener {
    private final StringBuilder text = new StringBuilder();

    @Override
    public CompletionStage<?> onText(WebSocket from, CharSequence part, boolean isLast) {
      text.append(part);
      if (isLast) {
        answers.add(text.toString());
        text.setLength(0);
      }
      return WebSocket.Listener.super.onText(from, part, isLast);
    }
  }

  /** Calls a method of the protocol and waits for its answer. */
  String call(String method, String parameters) throws InterruptedException {
    int id = ++calls;
    socket
        .sendText(
            "{\"id\":" + id + ",\"method\":\"" + method + "\",\"params\":" + parameters + "}", true)
        .join();
    String begin = "{\"id\":" + id + ",";
    while (true) {
      String answer = answers.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
      if (answer == null) {
        throw new IllegalStateException("no answer to " + method);
      }
      if (answer.startsWith(begin)) {
        return answer;
      }
    }
  }

  /** The value of an expression or of its promise, as text. */
  String run(String script) throws InterruptedException {
    String coded = Base64.getEncoder().encodeToString(script.getBytes(StandardCharsets.UTF_8));
    String decoded =
        "new TextDecoder().decode(Uint8Array.from(atob('" + coded + "'), c => c.charCodeAt(0)))";
    String answer =
        call(
            "Runtime.evaluate",
            "{\"awaitPromise\":true,\"expression\":\"Promise.resolve((0, eval)("
                + decoded
                + ")).then(v => btoa(String.fromCharCode(...new"
                + " TextEncoder().encode(String(v)))))\",\"allowUnsafeEvalBlockedByCSP\":true}");
    Matcher value = Pattern.compile("\"value\":\"([A-Za-z0-9+/=]*)\"").matcher(answer);
    if (!value.find()) {
      throw new IllegalStateException(answer.substring(0, Math.min(600, answer.length())));
    }
    return new String(Base64.getDecoder().decode(value.group(1)), StandardCharsets.UTF_8);
  }

  /** The bytes that a method gives back as its data. */
  byte[] data(String method, String parameters) throws InterruptedException {
    String answer = call(method, parameters);
    Matcher data = Pattern.compile("\"data\":\"([A-Za-z0-9+/=]*)\"").matcher(answer);
    if (!data.find()) {
      throw new IllegalStateException(answer.substring(0, Math.min(600, answer.length())));
    }
    return Base64.getDecoder().decode(data.group(1));
  }

  /** A screen of so many points, in the light or in the dark. */
  void look(int width, int height, String scheme) throws InterruptedException {
    call(
        "Emulation.setDeviceMetricsOverride",
        "{\"width\":%d,\"height\":%d,\"deviceScaleFactor\":1,\"mobile\":%b}"
            .formatted(width, height, width < 600));
    prefers("prefers-color-scheme", scheme);
  }

  void prefers(String feature, String value) throws InterruptedException {
    call(
        "Emulation.setEmulatedMedia",
        "{\"features\":[{\"name\":\"%s\",\"value\":\"%s\"}]}".formatted(feature, value));
  }

  /** What an audit with axe-core finds, a line a finding. */
  String audit() throws IOException, InterruptedException {
    try (InputStream axe = Chromium.class.getResourceAsStream("/axe.min.js")) {
      run(new String(axe.readAllBytes(), StandardCharsets.UTF_8) + "; 'loaded'");
    }
    return run(
        "axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa',"
            + " 'best-practice'] }).then(r => r.violations.map(v => v.id + ': ' + v.nodes.map("
            + "n => n.html.slice(0, 120) + ' ' + n.failureSummary).join(' | ')).join('\\n'))");
  }

  /** The whole page as a picture. */
  byte[] picture() throws InterruptedException {
    return data("Page.captureScreenshot", "{\"captureBeyondViewport\":true}");
  }

  /** As printed on A4 paper. */
  byte[] printed() throws InterruptedException {
    return data("Page.printToPDF", "{\"paperWidth\":8.27,\"paperHeight\":11.69}");
  }

  /** A key pressed and let go. */
  void press(String key) throws InterruptedException {
    for (String type : List.of("rawKeyDown", "keyUp")) {
      call(
          "Input.dispatchKeyEvent",
          "{\"type\":\"%s\",\"key\":\"%s\",\"code\":\"%s\",\"windowsVirtualKeyCode\":%d}"
              .formatted(type, key, key, key.equals("Tab") ? 9 : 32));
    }
  }

  /** Ends it and waits for all of its processes, so that nothing is written any more. */
  @Override
  public void close() {
    socket.abort();
    List<ProcessHandle> all =
        Stream.concat(Stream.of(process.toHandle()), process.descendants()).toList();
    process.destroy();
    try {
      for (ProcessHandle each : all) {
        each.onExit().get(10, TimeUnit.SECONDS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (ExecutionException | TimeoutException e) {
      all.forEach(ProcessHandle::destroyForcibly);
    }
  }
}
