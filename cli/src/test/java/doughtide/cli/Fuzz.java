package doughtide.cli;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;

/**
 * Makes calls that a careless, unlucky or hostile user could make. A call depends on its number and
 * on nothing else, so that each can be made again alone. Numbers go round: every option of every
 * command in turn, then every kind of file.
 */
final class Fuzz {

  /**
   * A call.
   *
   * @param words what is typed
   * @param target the option or kind of file that is spoiled
   * @param spoiled what was put into a file, empty if none was
   * @param refused whether the program must refuse it
   */
  record Call(String[] words, String target, byte[] spoiled, boolean refused) {}

  /** Text that is never a number, a time or a word any option knows. */
  private static final List<String> NEVER =
      List.of(
          "",
          " ",
          "=1+1",
          "@A1",
          "\u0000",
          "\uFFFD",
          "NaN",
          "Infinity",
          "-Infinity",
          "1e308",
          "1/0",
          "<b>x</b>",
          "$(id)",
          "%s%n%d",
          "٢٥ّ",
          "25C;;",
          "::",
          "NaNC",
          "NaN%",
          "1e3%",
          "0x19C",
          "Infinity%",
          "+-5C",
          "5e-1h",
          "1_000g",
          "--",
          "25..5C");

  private static final List<String> ODD =
      List.of(
          "",
          " ",
          "-",
          "--",
          "=",
          "\u202E25C",
          "-0",
          "0",
          "0C",
          "-0C",
          "٢٥C",
          "２５C",
          "25°",
          "25C,",
          ":",
          ",",
          "3h:",
          "25C,3h:",
          "25C,3h:22C",
          "25C,3h:22C,3h:21C",
          "25C,719h:4C",
          "-2C",
          "-2.0001C",
          "45C",
          "45.0001C",
          "35C",
          "34.9999C",
          "0.0001C",
          "0%",
          "0.0001%",
          "100%",
          "100.0001%",
          "white:",
          "white:100%",
          "rye:50%,rye:50%",
          "white:33.3%,rye:33.3%,wholemeal wheat:33.4%",
          "-430m",
          "9000m",
          "0ft",
          "1:0:0",
          "0:1:1",
          "1:1:1",
          "1:1000:1000",
          "0.001:1000:0",
          "00:00",
          "24:00",
          "23:59",
          "2027-02-29T12:00",
          "9999-12-31T23:59",
          "0000-01-01T00:00",
          "2027-03-28T02:30",
          "UTC",
          "../..",
          "/",
          ".",
          "/dev/null",
          "\t",
          "\u2028",
          "text",
          "json",
          "csv",
          "jsonl",
          "1",
          "8",
          "7",
          "65537",
          "0.5h",
          "0min",
          "0.01g",
          "1g",
          "50kg",
          "00:00-24:00",
          "23:00-01:00",
          "10:00-10:00",
          "+1C",
          "'+1",
          "721h",
          "720h",
          "60%",
          "1000%");

  private static final List<String> NUMBERS =
      List.of(
          "0",
          "-0",
          "-1",
          "1",
          "7",
          "44.9",
          "45.1",
          "99999",
          "999999999",
          "9999999999",
          "0.000001",
          "0.000000001",
          "1e3",
          "3,5",
          "1,000",
          "",
          "NaN",
          "1e999",
          "-273.15",
          "100",
          "400.001");

  /** In how many of ten calls a file is spoiled instead of an option. */
  private static final int FILES_OF_TEN = 3;

  private static final List<FuzzSamples.Reader> READERS = FuzzSamples.READERS;

  /** Commands whose answers take a second or more, and how many turns go by between two of them. */
  private static final Set<String> SLOW =
      Set.of("bake-day", "leave", "learn", "handout", "start", "note", "now", "class-day");

  private static final int SLOW_EVERY = 66;

  private static final List<String> SLOW_TARGETS = targets().stream().filter(Fuzz::isSlow).toList();
  static final List<String> QUICK_TARGETS =
      targets().stream().filter(each -> !isSlow(each)).toList();

  private final Path folder;
  private final Random random;
  private final long number;
  private boolean refused;
  private byte[] spoiled = {};

  private Fuzz(long number, Path folder) {
    this.number = number;
    this.random = new Random(number * 0x9E3779B97F4A7C15L);
    this.folder = folder;
  }

  /** The call of this number. */
  static Call call(long number, Path folder) throws IOException {
    Fuzz fuzz = new Fuzz(number, folder);
    return number % 10 < FILES_OF_TEN ? fuzz.fileCall() : fuzz.optionCall();
  }

  /** The options of all commands, as "command --option". */
  static List<String> targets() {
    List<String> targets = new ArrayList<>();
    for (String name : Commands.NAMES) {
      Commands.named(name)
          .spec()
          .options()
          .forEach(option -> targets.add(name + " " + option.typed()));
    }
    return targets;
  }

  /** How many calls it takes to come round all options once. */
  static long round() {
    return (SLOW_TARGETS.size() + 1L) * SLOW_EVERY * 10 / (10 - FILES_OF_TEN);
  }

  /** How many calls it takes to come round all quick options once, and all readers. */
  static long quickRound() {
    return 10L * (QUICK_TARGETS.size() * (SLOW_EVERY + 1L) / SLOW_EVERY / (10 - FILES_OF_TEN) + 1);
  }

  private static String target(long turn) {
    boolean slow = turn % SLOW_EVERY == 0;
    List<String> some = slow ? SLOW_TARGETS : QUICK_TARGETS;
    long slowTurns = turn / SLOW_EVERY;
    return some.get((int) ((slow ? slowTurns : turn - slowTurns - 1) % some.size()));
  }

  private static boolean isSlow(String target) {
    return SLOW.contains(target.split(" ")[0]);
  }

  /** Numbers that are no file's, counted from 0. */
  private long optionNumber() {
    return number / 10 * (10 - FILES_OF_TEN) + number % 10 - FILES_OF_TEN;
  }

  private Call fileCall() throws IOException {
    long turn = number / 10 * FILES_OF_TEN + number % 10;
    FuzzSamples.Reader reader = READERS.get((int) (turn % READERS.size()));
    if (isSlow(reader.words().get(0)) && turn / READERS.size() % 4 > 0) {
      reader = READERS.get(0);
    }
    Path file = folder.resolve(reader.file());
    spoiled = spoil(Files.readAllBytes(file));
    Files.write(file, spoiled);
    List<String> words = new ArrayList<>(reader.words());
    String command = words.get(0);
    fewMembers(words, Commands.named(command).spec());
    return new Call(words.toArray(String[]::new), reader.toString(), spoiled, false);
  }

  private Call optionCall() throws IOException {
    String[] target = target(optionNumber()).split(" ");
    CommandSpec spec = Commands.named(target[0]).spec();
    OptionSpec first = spec.option(target[1].substring(2));
    List<String> words = new ArrayList<>(List.of(target[0]));
    if (random.nextInt(8) > 0) {
      words.addAll(pick(calls(target[0], spec)));
    }
    addOption(words, first, true);
    for (int i = random.nextInt(3); i > 0; i--) {
      OptionSpec other = pick(spec.options());
      addOption(words, other, false);
      refused &= !other.equals(first); // may have been set right again
    }
    if (random.nextInt(10) == 0) {
      words.add(value(""));
      refused = false;
    }
    if (random.nextInt(15) == 0) {
      words.remove(random.nextInt(words.size()));
      refused = false;
    }
    if (random.nextInt(80) == 0) {
      words.set(0, broken(words.isEmpty() ? "" : words.get(0)));
    }
    fewMembers(words, spec);
    boolean help = words.contains("--help") || words.contains("-h") || words.contains("help");
    return new Call(
        words.toArray(String[]::new), String.join(" ", target), spoiled, refused && !help);
  }

  private static List<List<String>> calls(String command, CommandSpec spec) {
    List<List<String>> calls = new ArrayList<>(FuzzSamples.CALLS.getOrDefault(command, List.of()));
    spec.examples().forEach(example -> calls.add(example.arguments()));
    return calls;
  }

  /** Rough forecasts are as good to fuzz as fine ones, and quick. */
  private static void fewMembers(List<String> words, CommandSpec spec) {
    boolean has = spec.options().stream().anyMatch(option -> option.name().equals("members"));
    if (has && !words.isEmpty() && !words.contains("--members")) {
      words.add(1, "8");
      words.add(1, "--members");
    }
  }

  private void addOption(List<String> words, OptionSpec option, boolean target) throws IOException {
    boolean never = target && strict(option) && random.nextInt(4) == 0;
    String value = never ? pick(NEVER) : value(option.example());
    int there = words.indexOf(option.typed());
    if (there >= 0 && option.takesValue() && there + 1 < words.size()) {
      words.set(there + 1, value); // spoils the example's own value
    } else {
      words.add(random.nextInt(60) == 0 ? broken(option.typed()) : option.typed());
      if (option.takesValue() != (random.nextInt(60) == 0)) {
        words.add(value);
      }
    }
    refused |= never;
  }

  /** Whether an option takes no free text. */
  private static boolean strict(OptionSpec option) {
    Set<String> free = new HashSet<>(List.of("TEXT", "FILE", "NAME"));
    return option.takesValue() && !free.contains(option.word());
  }

  private String value(String example) throws IOException {
    return switch (random.nextInt(7)) {
      case 0 -> example;
      case 1 -> pick(ODD);
      case 2 -> pick(NEVER);
      case 3 -> broken(example);
      case 4 -> random.nextInt(20) == 0 ? "x".repeat(1 + random.nextInt(70_000)) : number(example);
      case 5 -> random.nextInt(4) == 0 ? pick(List.copyOf(FuzzSamples.NAMES)) : number(example);
      default -> number(example);
    };
  }

  /** The text with one of its numbers changed. */
  private String number(String text) {
    List<int[]> places = new ArrayList<>();
    var matcher = java.util.regex.Pattern.compile("[0-9]+([.,][0-9]+)?").matcher(text);
    while (matcher.find()) {
      places.add(new int[] {matcher.start(), matcher.end()});
    }
    if (places.isEmpty()) {
      return broken(text);
    }
    int[] place = pick(places);
    return text.substring(0, place[0]) + pick(NUMBERS) + text.substring(place[1]);
  }

  /** The text with a few characters changed, doubled or left out. */
  private String broken(String text) {
    StringBuilder broken = new StringBuilder(text);
    for (int i = random.nextInt(3); i >= 0; i--) {
      int at = broken.length() == 0 ? 0 : random.nextInt(broken.length());
      char c = (char) (random.nextInt(4) == 0 ? random.nextInt(0x10000) : 32 + random.nextInt(95));
      switch (random.nextInt(3)) {
        case 0 -> broken.insert(at, c);
        case 1 -> broken.replace(at, Math.min(at + 1, broken.length()), String.valueOf(c));
        default -> broken.delete(at, Math.min(at + 1, broken.length()));
      }
    }
    return broken.toString();
  }

  /** A file that its reader takes, spoiled. */
  private byte[] spoil(byte[] bytes) {
    return switch (random.nextInt(9)) {
      case 0 -> Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      case 1 -> spliced(bytes);
      case 2, 3 -> flipped(bytes);
      case 4 -> lines(bytes);
      case 5 ->
          random.nextInt(10) == 0 ? pick(ODD).getBytes(StandardCharsets.UTF_8) : spliced(bytes);
      case 6 -> encoded(bytes);
      default -> number(text(bytes)).getBytes(StandardCharsets.UTF_8);
    };
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  private byte[] encoded(byte[] bytes) {
    return switch (random.nextInt(4)) {
      case 0 -> text(bytes).getBytes(StandardCharsets.UTF_16);
      case 1 -> ("\uFEFF" + text(bytes)).getBytes(StandardCharsets.UTF_8);
      case 2 -> text(bytes).replace("\n", "\r\n").getBytes(StandardCharsets.UTF_8);
      default ->
          text(bytes).replace(',', pick(List.of(';', '\t', '|'))).getBytes(StandardCharsets.UTF_8);
    };
  }

  /** One line doubled, left out or put elsewhere, or one field of it changed. */
  private byte[] lines(byte[] bytes) {
    List<String> lines = new ArrayList<>(text(bytes).lines().toList());
    int at = random.nextInt(lines.size());
    int to = random.nextInt(lines.size());
    switch (random.nextInt(4)) {
      case 0 -> lines.add(to, lines.get(at));
      case 1 -> lines.remove(at);
      case 2 -> lines.add(Math.min(to, lines.size() - 1), lines.remove(at));
      default -> lines.set(at, field(lines.get(at)));
    }
    return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
  }

  private String field(String line) {
    String[] fields = line.split("(?<=[,;:])|(?=[,;:])");
    fields[random.nextInt(fields.length)] = random.nextBoolean() ? pick(ODD) : pick(NEVER);
    return String.join("", fields);
  }

  private byte[] flipped(byte[] bytes) {
    for (int i = random.nextInt(4); i >= 0 && bytes.length > 0; i--) {
      int c = random.nextBoolean() ? 32 + random.nextInt(95) : random.nextInt(256);
      bytes[random.nextInt(bytes.length)] = (byte) c;
    }
    return bytes;
  }

  private byte[] spliced(byte[] bytes) {
    int cut = random.nextInt(bytes.length + 1);
    ByteArrayOutputStream spliced = new ByteArrayOutputStream();
    spliced.write(bytes, 0, cut);
    spliced.writeBytes(pick(ODD).getBytes(StandardCharsets.UTF_8));
    spliced.write(bytes, cut, bytes.length - cut);
    return spliced.toByteArray();
  }

  private <T> T pick(List<T> list) {
    return list.get(random.nextInt(list.size()));
  }
}
