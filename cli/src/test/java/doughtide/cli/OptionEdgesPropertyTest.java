package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Numbers at the ends of every option's range and beyond them. The ranges are found by asking: a
 * number far outside is refused with its range in the line; the end of that range is given next,
 * until a number is taken or refused for another reason.
 */
class OptionEdgesPropertyTest {

  private static final Pattern RANGE =
      Pattern.compile("outside (-?[0-9.]+)…(-?[0-9.]+)|from ([0-9]+) to ([0-9]+)");
  private static final Pattern NUMBER = Pattern.compile("-?[0-9]+(?:[.][0-9]+)?");
  private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity)\\b");
  private static final int DEEPEST = 6;

  private enum End {
    LOW,
    HIGH
  }

  private final List<String> misses = new ArrayList<>();
  private int ends;

  @TempDir Path folder;

  @Test
  @Tag("long")
  void endsEndWellAndWhatLiesBeyondIsRefused() throws Exception {
    FuzzSamples samples = FuzzSamples.in(folder);
    for (String name : Commands.NAMES) {
      CommandSpec spec = Commands.named(name).spec();
      for (OptionSpec option : spec.options()) {
        if (option.takesValue() && NUMBER.matcher(option.example()).find()) {
          for (End end : End.values()) {
            narrow(spec, option, end, samples);
          }
        }
      }
    }
    System.out.println(ends + " ends of ranges");
    assertThat(misses).isEmpty();
    assertThat(ends).isGreaterThan(200);
  }

  /** From far outside, end by end, to what is taken. */
  private void narrow(CommandSpec spec, OptionSpec option, End end, FuzzSamples samples)
      throws Exception {
    BigDecimal number = new BigDecimal(end == End.LOW ? "-99999999" : "99999999");
    for (int i = 0; i < DEEPEST; i++) {
      CliRun run = run(spec, option, number, samples);
      Optional<BigDecimal> found = end(run, end);
      if (found.isEmpty() || found.get().compareTo(number) == 0) {
        return;
      }
      number = found.get();
      ends++;
      BigDecimal step = option.word().equals("COUNT") ? BigDecimal.ONE : new BigDecimal("0.001");
      BigDecimal beyond = end == End.LOW ? number.subtract(step) : number.add(step);
      if (run(spec, option, beyond, samples).code() != Main.BAD_INPUT) {
        misses.add(spec.name() + " " + option.typed() + " takes " + beyond);
      }
    }
  }

  private static Optional<BigDecimal> end(CliRun run, End end) {
    Matcher range = RANGE.matcher(run.err());
    if (run.code() != Main.BAD_INPUT || !range.find()) {
      return Optional.empty();
    }
    int first = range.group(1) != null ? 1 : 3;
    return Optional.of(new BigDecimal(range.group(end == End.LOW ? first : first + 1)));
  }

  private CliRun run(CommandSpec spec, OptionSpec option, BigDecimal number, FuzzSamples samples)
      throws Exception {
    String example = option.example().replace("min", "h").replace("kg", "g");
    String value = NUMBER.matcher(example).replaceFirst(number.toPlainString());
    CliRun run =
        CliRun.in(TestEnvironment.in(folder), with(spec, option, value).toArray(String[]::new));
    samples.putRight();
    String label = spec.name() + " " + option.typed() + " " + value + ": ";
    if (run.code() != Main.OK && run.code() != Main.BAD_INPUT) {
      misses.add(label + run.err());
    }
    if (run.code() == Main.BAD_INPUT && run.err().lines().count() != 1) {
      misses.add(label + "not one line: " + run.err());
    }
    if (NO_NUMBER.matcher(run.out()).find()) {
      misses.add(label + "prints no number");
    }
    return run;
  }

  /** An example that has the option already, or the first, with the value put in. */
  private static List<String> with(CommandSpec spec, OptionSpec option, String value) {
    CommandSpec.Example example =
        spec.examples().stream()
            .filter(each -> each.arguments().contains(option.typed()))
            .findFirst()
            .orElse(spec.examples().get(0));
    List<String> words = new ArrayList<>(List.of(spec.name()));
    words.addAll(example.arguments());
    int there = words.indexOf(option.typed());
    if (there >= 0) {
      words.set(there + 1, value);
    } else {
      words.addAll(List.of(option.typed(), value));
    }
    boolean members = spec.options().stream().anyMatch(each -> each.name().equals("members"));
    if (members && !words.contains("--members")) {
      words.addAll(List.of("--members", "8"));
    }
    return words;
  }
}
