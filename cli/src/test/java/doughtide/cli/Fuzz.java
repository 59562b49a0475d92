package doughtide.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Makes calls that a careless, unlucky or hostile user could make; the same for the same seed. */
final class Fuzz {

  private static final List<String> ODD =
      List.of(
          "",
          " ",
          "-",
          "--",
          "=",
          "=1+1",
          "@A1",
          "\u0000",
          "\uFFFD",
          "\u202E25C",
          "\uD800",
          "NaN",
          "Infinity",
          "-Infinity",
          "1e308",
          "-0",
          "0",
          "0C",
          "-0C",
          "1/0",
          "٢٥C",
          "２５C",
          "25°",
          "25C;",
          "25C,",
          ":",
          ",",
          "3h:",
          "25C,3h:",
          "25C,3h:22C,3h:21C",
          "999999999C",
          "-273.15C",
          "-273.16C",
          "45C",
          "45.001C",
          "-2C",
          "-2.001C",
          "0%",
          "100%",
          "100.0001%",
          "400%",
          "45%",
          "44.999%",
          "200%",
          "200.001%",
          "4%",
          "4.0001%",
          "white:",
          "white:100%",
          "rye:50%,rye:50%",
          "white:33.3%,rye:33.3%,wholemeal wheat:33.4%",
          "0m",
          "-430m",
          "9000m",
          "8849m",
          "0ft",
          "1:0:0",
          "0:1:1",
          "1:1:1",
          "1:5:5",
          "00:00",
          "24:00",
          "23:59",
          "2027-02-29T12:00",
          "9999-12-31T23:59",
          "0000-01-01T00:00",
          "UTC",
          "../..",
          "/",
          ".",
          "/dev/null",
          "<b>x</b>",
          "$(id)",
          "%s%n%d",
          "a\nb",
          "\t",
          "\u2028",
          "text",
          "json",
          "csv",
          "jsonl",
          "1",
          "8",
          "7",
          "65536",
          "65537",
          "999999999",
          "0.5h",
          "0min",
          "721h",
          "720h",
          "60%",
          "1000%");

  private final Random random;
  private final Path folder;

  Fuzz(long seed, Path folder) {
    this.random = new Random(seed);
    this.folder = folder;
  }

  /** A call of some command. */
  String[] call() throws IOException {
    String name = pick(Commands.NAMES);
    CommandSpec spec = Commands.named(name).spec();
    List<String> words = new ArrayList<>();
    words.add(random.nextInt(60) == 0 ? broken(name) : name);
    if (random.nextInt(3) > 0) {
      words.addAll(pick(spec.examples()).arguments());
    }
    for (int i = random.nextInt(3); i >= 0; i--) {
      addOption(words, spec);
    }
    if (random.nextInt(4) == 0) {
      words.add(value(""));
    }
    if (random.nextInt(12) == 0) {
      words.remove(random.nextInt(words.size()));
    }
    return words.toArray(String[]::new);
  }

  private void addOption(List<String> words, CommandSpec spec) throws IOException {
    if (spec.options().isEmpty()) {
      return;
    }
    OptionSpec option = pick(spec.options());
    int there = words.indexOf(option.typed());
    if (there >= 0 && option.takesValue() && there + 1 < words.size()) {
      words.set(there + 1, value(option.example())); // spoils the example's own value
      return;
    }
    words.add(random.nextInt(40) == 0 ? broken(option.typed()) : option.typed());
    if (option.takesValue() != (random.nextInt(40) == 0)) {
      words.add(value(option.example()));
    }
  }

  private String value(String example) throws IOException {
    return switch (random.nextInt(6)) {
      case 0 -> example;
      case 1, 2 -> pick(ODD);
      case 3 -> broken(example);
      case 4 -> example.isEmpty() ? "x".repeat(1 + random.nextInt(70_000)) : number(example);
      default -> random.nextInt(3) == 0 ? file() : number(example);
    };
  }

  /** The text with one of its numbers changed. */
  private String number(String example) {
    String[] numbers = {"0", "-1", "1", "7", "44.9", "45.1", "99999", "0.000001", "1e3", "3,5", ""};
    return example.replaceFirst("[0-9]+", numbers[random.nextInt(numbers.length)]);
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

  /** The name of a file with something in it. */
  private String file() throws IOException {
    String name = "fuzz" + random.nextInt(20) + pick(List.of(".csv", ".txt", ".json", " é.csv"));
    Files.write(folder.resolve(name), content());
    return name;
  }

  /** A file that some reader takes, spoiled. */
  byte[] content() throws IOException {
    List<Path> samples = new ArrayList<>();
    try (var files = Files.newDirectoryStream(folder, "sample*")) {
      files.forEach(samples::add);
    }
    samples.sort(null);
    byte[] bytes =
        samples.isEmpty() || random.nextInt(8) == 0
            ? pick(ODD).getBytes(StandardCharsets.UTF_8)
            : Files.readAllBytes(pick(samples));
    return switch (random.nextInt(5)) {
      case 0 -> bytes;
      case 1 -> java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length + 1));
      case 2 -> spliced(bytes);
      default -> flipped(bytes);
    };
  }

  private byte[] flipped(byte[] bytes) {
    for (int i = random.nextInt(4); i >= 0 && bytes.length > 0; i--) {
      bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
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
