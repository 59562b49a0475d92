package doughtide.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import doughtide.core.quantity.Shorten;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;

/** Makes a range of calls and collects what is wrong with their ends. */
final class FuzzRun {

  /** Of one core; other work on the machine does not count. */
  private static final long LONGEST_SECONDS = 10;

  /** By the clock: after this a call hangs, and the range ends. */
  private static final long GIVE_UP_SECONDS = 300;

  private static final int PROGRESS_EVERY = 1000;
  private static final Pattern NOT_A_NUMBER =
      Pattern.compile("(?<![A-Za-z])(NaN|-?Infinity)(?![A-Za-z])");
  private static final Pattern BAD_LINE = Pattern.compile("^'.+' line [0-9]+: .");
  private static final Pattern OPENS_FORMULA = Pattern.compile("(?m)(^|,)\"?[=@]");

  /** An option, or what must follow the options. */
  private static final Pattern OPTION =
      Pattern.compile("--[a-z]| (has no option|needs (FILE|one of|a file))");

  private static final Pattern QUOTED = Pattern.compile("'([^']*)'");
  private static final Pattern DEGREES = Pattern.compile("(\\d+(?:\\.\\d+)?) °C");

  /** So many characters of a word are enough to know it by. */
  private static final int KNOWN_BY = 20;

  private final Path folder;
  private final PrintStream progress;
  private final FuzzSamples samples;
  private final List<String> findings = new ArrayList<>();
  private final Map<String, int[]> ends = new TreeMap<>();

  private FuzzRun(Path folder, PrintStream progress) throws IOException {
    this.folder = folder;
    this.progress = progress;
    this.samples = FuzzSamples.in(folder);
  }

  /**
   * What was found.
   *
   * @param findings one text each, with the number of the call
   * @param ends for each option and kind of file: calls, answers, milliseconds
   */
  record Report(List<String> findings, Map<String, int[]> ends) {}

  /**
   * Makes the calls.
   *
   * @param from the number of the first
   * @param count how many
   */
  static Report of(long from, long count, Path folder, PrintStream progress) throws IOException {
    FuzzRun run = new FuzzRun(folder, progress);
    ExecutorService worker =
        Executors.newSingleThreadExecutor(
            task -> {
              Thread thread = new Thread(task, "fuzzed call");
              thread.setDaemon(true);
              return thread;
            });
    try {
      for (long number = from; number < from + count; number++) {
        run.make(number, worker);
        if ((number - from + 1) % PROGRESS_EVERY == 0) {
          progress.println(number + 1 + " calls, findings " + run.findings.size());
        }
      }
    } finally {
      worker.shutdownNow();
    }
    return new Report(run.findings, run.ends);
  }

  private void make(long number, ExecutorService worker) throws IOException {
    Fuzz.Call call = Fuzz.call(number, folder);
    String label = "call " + number + " [" + call.target() + "]: " + shown(call.words());
    Ended ended = ended(label, call, worker);
    CliRun run = ended.run();
    if (ended.seconds() > LONGEST_SECONDS) {
      find(label, "took " + Math.round(ended.seconds()) + " s of a core");
    }
    int[] end = ends.computeIfAbsent(call.target(), target -> new int[3]);
    end[0]++;
    end[1] += run.code() == Main.OK ? 1 : 0;
    end[2] += (int) (1000 * ended.seconds());
    check(label, call, run);
    samples.putRight();
  }

  private record Ended(CliRun run, double seconds) {}

  private Ended ended(String label, Fuzz.Call call, ExecutorService worker) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    Future<Ended> future =
        worker.submit(
            () -> {
              long begin = threads.getCurrentThreadCpuTime();
              CliRun run = CliRun.in(TestEnvironment.in(folder), call.words());
              return new Ended(run, (threads.getCurrentThreadCpuTime() - begin) / 1e9);
            });
    try {
      return future.get(GIVE_UP_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException e) {
      throw new IllegalStateException("hangs: " + label, e);
    } catch (ExecutionException | InterruptedException e) {
      throw new IllegalStateException("ends badly: " + label, e);
    }
  }

  private void check(String label, Fuzz.Call call, CliRun run) throws IOException {
    if (run.code() != Main.OK && run.code() != Main.BAD_INPUT) {
      find(label, "exit code " + run.code() + ": " + run.err());
    }
    if (run.err().contains("Exception") || run.err().contains("\tat ")) {
      find(label, "speaks of its own parts: " + run.err());
    }
    if (run.err().chars().anyMatch(c -> c < ' ' && c != '\n')) {
      find(label, "has control characters on standard error");
    }
    if (call.refused() && run.code() == Main.OK) {
      find(label, "is taken");
    }
    if (run.code() == Main.BAD_INPUT) {
      checkRefusal(label, call, run);
    }
    boolean echoed =
        NOT_A_NUMBER.matcher(String.join(" ", call.words())).find()
            || NOT_A_NUMBER.matcher(new String(call.spoiled(), StandardCharsets.UTF_8)).find();
    if (!echoed) {
      checkNumbers(label, run);
    }
    checkForm(label, call, run);
  }

  private void checkRefusal(String label, Fuzz.Call call, CliRun run) {
    List<String> lines = run.err().lines().toList();
    long reasons = lines.stream().filter(line -> line.startsWith("doughtide: ")).count();
    long badLines = lines.stream().filter(line -> BAD_LINE.matcher(line).find()).count();
    boolean batch = Arrays.asList(call.words()).contains("batch"); // names each bad row
    if (!run.err().endsWith("\n")
        || (reasons != 1 && !batch)
        || reasons + (batch ? 0 : badLines) != lines.size()) {
      find(label, "is not refused in one line: " + run.err());
    }
    if (lines.stream().anyMatch(line -> line.length() < 25)) {
      find(label, "is refused without a reason: " + run.err());
    }
    if (!speaksOfTheCall(run.err(), call)) {
      find(label, "is refused for what was not typed: " + run.err());
    }
  }

  /**
   * Whether a refusal quotes a word of the call or of a file, shortened or not, or names an option.
   * One that does none of these speaks of a number that the program worked out: a fault inside.
   */
  private static boolean speaksOfTheCall(String refusal, Fuzz.Call call) {
    String flat = flat(refusal.replaceAll("--help\\b", ""));
    String spoiled = new String(call.spoiled(), StandardCharsets.UTF_8);
    String given = flat(String.join(" ", call.words()) + FuzzSamples.text() + spoiled);
    return OPTION.matcher(flat).find()
        || Arrays.stream(call.words())
            .map(word -> flat(Shorten.to(word, KNOWN_BY)).replace("…", ""))
            .anyMatch(word -> word.length() > 2 && flat.contains(word))
        || QUOTED
            .matcher(flat)
            .results()
            .map(quoted -> quoted.group(1).replaceAll("[…\uFFFD].*", ""))
            .anyMatch(quoted -> given.contains(quoted) || isPathOf(quoted, call))
        || DEGREES
            .matcher(flat)
            .results()
            .anyMatch(degrees -> given.contains(degrees.group(1) + "C"));
  }

  /** A name may be told with its folder. */
  private static boolean isPathOf(String quoted, Fuzz.Call call) {
    return Arrays.stream(call.words()).anyMatch(word -> quoted.endsWith("/" + flat(word)));
  }

  /** Without what a terminal would not show as it stands. */
  private static String flat(String text) {
    return text.replaceAll("[^\\p{L}\\p{N}\\p{P}\\p{S}]+", " ");
  }

  private void checkNumbers(String label, CliRun run) throws IOException {
    if (NOT_A_NUMBER.matcher(run.out()).find()) {
      find(label, "prints what is no number");
    }
    try (DirectoryStream<Path> drawn = Files.newDirectoryStream(folder, "*.{svg,ics,json,txt}")) {
      for (Path file : drawn) {
        if (NOT_A_NUMBER
            .matcher(new String(Files.readAllBytes(file), StandardCharsets.UTF_8))
            .find()) {
          find(label, "writes what is no number into " + file.getFileName());
        }
      }
    }
  }

  private void checkForm(String label, Fuzz.Call call, CliRun run) {
    List<String> words = Arrays.asList(call.words());
    boolean answer = run.code() == Main.OK && !run.out().startsWith("doughtide ");
    int at = words.indexOf("--format");
    String format = at < 0 || at + 1 >= words.size() ? "" : words.get(at + 1);
    if (answer && format.equals("json") && !isJson(run.out())) {
      find(label, "prints no JSON: " + Shorten.to(run.out(), 200));
    }
    if (answer && format.equals("csv") && OPENS_FORMULA.matcher(run.out()).find()) {
      find(label, "prints a formula: " + Shorten.to(run.out(), 200));
    }
  }

  private static boolean isJson(String text) {
    try (JsonParser parser = new JsonFactory().createParser(text)) {
      int tokens = 0;
      while (parser.nextToken() != null) {
        tokens++;
      }
      return tokens > 1;
    } catch (IOException e) {
      return false;
    }
  }

  private void find(String label, String what) {
    findings.add(label + "\n  " + what);
    progress.println(label + "\n  " + what);
  }

  private static String shown(String[] words) {
    return String.join(
        " ", Arrays.stream(words).map(word -> "'" + Shorten.to(word, 80) + "'").toList());
  }
}
