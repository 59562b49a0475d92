package doughtide.cli.args;

import doughtide.core.document.Catalogue;
import doughtide.core.dough.Flour;
import doughtide.core.dough.StarterShare;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.ShellWord;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.function.BiFunction;

/**
 * One thing changed to several values, as typed: {@code dough-temp:20C,23C,26C}.
 *
 * @param subject what is changed
 * @param values as typed
 */
public record Variation(Subject subject, List<String> values) {

  /** The option's name for messages. */
  public static final String VARY = "--vary";

  private static final int MOST_VALUES = 100;

  /** What can be changed. */
  public enum Subject {
    DOUGH_TEMP("20C,23C,26C"),
    STARTER("10%,20%,30%"),
    PREFERMENTED("5%,10%,15%"),
    HYDRATION("65%,72%,80%"),
    FLOUR("white;wholemeal wheat;white:80%,rye:20%"),
    RATIO("1:1:1,1:5:5");

    private final String example;

    Subject(String example) {
      this.example = example;
    }

    public String typed() {
      return Arguments.word(this).replace(' ', '-');
    }

    String typedExample() {
      return typed() + ":" + example;
    }
  }

  public Variation {
    values = List.copyOf(values);
  }

  /**
   * Reads what was typed.
   *
   * @throws InputException if the thing is not known or has no values
   */
  public static Variation parse(String text) {
    String clean = Quantities.clean(text);
    int colon = clean.indexOf(':');
    String word = (colon < 0 ? clean : clean.substring(0, colon)).strip();
    Subject subject = subject(text, word);
    String rest = colon < 0 ? "" : clean.substring(colon + 1).strip();
    if (rest.isEmpty()) {
      throw new InputException(
          Quantities.shown(VARY, text)
              + " has no values: write for example "
              + VARY
              + " "
              + ShellWord.of(subject.typedExample()));
    }
    String separator = subject == Subject.FLOUR ? " ?; ?" : "(?<=[A-Za-z%0-9]) ?[,;] ?(?=[0-9])";
    List<String> values = List.of(rest.split(separator, -1));
    if (values.size() > MOST_VALUES) {
      throw new InputException(
          VARY + " has " + values.size() + " values, at most " + MOST_VALUES + " are read");
    }
    return new Variation(subject, values);
  }

  private static Subject subject(String text, String word) {
    String wanted = word.toLowerCase(java.util.Locale.ROOT).replaceAll("[\\s_]+", "-");
    for (Subject subject : Subject.values()) {
      if (subject.typed().equals(wanted)) {
        return subject;
      }
    }
    List<String> words = java.util.Arrays.stream(Subject.values()).map(Subject::typed).toList();
    String hint = Nearest.to(wanted, words).map(n -> "did you mean " + n + "? ").orElse("");
    throw new InputException(
        Quantities.shown(VARY, text)
            + " begins with no word known here: "
            + hint
            + "Known are "
            + String.join(", ", words));
  }

  public List<Temperature> temperatures() {
    List<Temperature> temperatures = read(Quantities::temperature);
    for (Temperature temperature : temperatures) {
      new TemperatureSteps(
              List.of(new doughtide.core.thermal.TemperatureTrace.Step(0, temperature)))
          .dough(VARY);
    }
    return temperatures;
  }

  public List<Share> shares() {
    return read(Quantities::share);
  }

  /** In the convention that was named. */
  public List<StarterShare> starterShares() {
    return shares().stream()
        .map(
            share ->
                subject == Subject.PREFERMENTED
                    ? StarterShare.prefermented(share)
                    : StarterShare.ofAddedFlour(share))
        .toList();
  }

  public List<Flour> flours(Catalogue catalogue) {
    return read(catalogue::flour);
  }

  public List<FeedRatio> ratios() {
    return read(
        (name, text) -> {
          Quantities.FeedRatio parts = Quantities.feedRatio(name, text);
          return new FeedRatio(parts.starter(), parts.flour(), parts.water());
        });
  }

  private <T> List<T> read(BiFunction<String, String, T> reader) {
    return values.stream().map(value -> reader.apply(VARY, value)).toList();
  }
}
