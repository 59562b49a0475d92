package doughtide.core.document;

import doughtide.core.Internal;
import doughtide.core.document.DocumentReader.Entry;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterCondition;
import doughtide.core.feeding.BuildStage;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.StagedBuild;
import doughtide.core.quantity.Altitude;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Shorten;
import doughtide.core.quantity.Temperature;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The stages of a starter as text: what the seed is, then a line {@code stage:} for each, with its
 * parts in any order, parted by commas.
 *
 * <pre>{@code
 * String text = "starter hydration: 100%\nstarter flour: rye\n"
 *     + "stage: fresh sour, 1:5, dough yield 200, rye, 26C, 6h\n"
 *     + "stage: full sour, 1:1:1, rye, 30C, until ripe";
 * StagedBuild build = StagesDocument.read(text.lines().iterator(), Catalogue.standard());
 * }</pre>
 */
@Internal
public final class StagesDocument {

  private static final String STAGE = "stage";
  private static final String HYDRATION = "starter-hydration";
  private static final String CONDITION = "starter-condition";
  private static final String FLOUR = "starter-flour";
  private static final String ALTITUDE = "altitude";
  private static final String EXAMPLE = "\"full sour, 1:2:2, rye, 30C, 4h\"";
  private static final Pattern PARTS = Pattern.compile("[0-9.,]+ ?:[0-9.,: ]+");
  private static final Pattern TEMPERATURE =
      Pattern.compile("[0-9.,]+ ?[°º˚]? ?(?:c|f|celsius|fahrenheit)");
  private static final Pattern HOURS = Pattern.compile("[0-9.,]+ ?(?:h|hours?|min|minutes?)[0-9]*");
  private static final Pattern YIELD =
      Pattern.compile("(?:dough yield|dy|teigausbeute|ta) ?([0-9.,]+)");

  /** What a part of a stage can be. */
  private enum Kind {
    PARTS,
    TEMPERATURE,
    HOURS,
    YIELD,
    MIX,
    WORDS,
    NONE
  }

  private static final String NUMBER = "\\d+(?:[.,]\\d+)?";

  /** What is said with one decimal mark a number at most; the first that fits. */
  private static final Map<Kind, Pattern> PLAIN = new EnumMap<>(Kind.class);

  static {
    PLAIN.put(Kind.PARTS, Pattern.compile(NUMBER + "(?: ?: ?" + NUMBER + "){1,2}"));
    PLAIN.put(
        Kind.TEMPERATURE,
        Pattern.compile("[-−]?" + NUMBER + " ?[°º˚]? ?(?:c|f|celsius|fahrenheit)"));
    PLAIN.put(Kind.HOURS, Pattern.compile(NUMBER + " ?(?:h|hours?|min|minutes?)[0-9]*"));
    PLAIN.put(Kind.YIELD, Pattern.compile("(?:dough yield|dy|teigausbeute|ta) ?" + NUMBER));
    String share = "(?:[^,%]|(?<=\\d),(?=\\d))*%[^,%]*";
    PLAIN.put(Kind.MIX, Pattern.compile(share + "(?:," + share + ")*"));
    PLAIN.put(Kind.WORDS, Pattern.compile("[^\\d,]+"));
  }

  private StagesDocument() {}

  /**
   * Reads a build.
   *
   * @param lines the text, without line endings
   * @param catalogue what can be named
   * @throws InputException if there is no stage, or a line cannot be used
   */
  public static StagedBuild read(Iterator<String> lines, Catalogue catalogue) {
    Map<String, Use> keys = new LinkedHashMap<>();
    keys.put(STAGE, Use.REPEATED);
    for (String key : List.of(HYDRATION, CONDITION, FLOUR, ALTITUDE)) {
      keys.put(key, Use.ONCE);
    }
    keys.put("note", Use.REMARK);
    DocumentReader reader = new DocumentReader(lines, keys, catalogue.vocabulary()).whole();
    Optional<Flour> flour =
        reader.value(FLOUR, text -> catalogue.flour(DocumentReader.label(FLOUR), text));
    List<BuildStage> stages = new ArrayList<>();
    for (Entry entry : reader.all(STAGE)) {
      stages.add(
          entry.read(
              text ->
                  stage(
                      DocumentReader.label(STAGE),
                      text,
                      flour.orElseGet(FlourClass.WHITE::flour),
                      catalogue)));
    }
    if (stages.isEmpty()) {
      throw new InputException(
          "stages.none", "there is no line 'stage: …': add for example stage: " + EXAMPLE);
    }
    Starter seed =
        new Starter(
            reader
                .value(HYDRATION, text -> Quantities.share(DocumentReader.label(HYDRATION), text))
                .orElse(Share.ofPercent(100)),
            flour.orElse(stages.get(0).flour()),
            reader
                .value(
                    CONDITION, text -> catalogue.condition(DocumentReader.label(CONDITION), text))
                .orElse(StarterCondition.RIPE));
    return new StagedBuild(
        seed,
        stages,
        reader
            .value(ALTITUDE, text -> Quantities.altitude(DocumentReader.label(ALTITUDE), text))
            .orElse(Altitude.SEA_LEVEL));
  }

  /**
   * One stage: its parts {@code starter:flour:water}, or {@code starter:flour} with a dough yield;
   * a temperature; hours or {@code until ripe}; and a flour and a name if it is to have them.
   *
   * @param label what it is given for, for messages
   * @param text as typed
   * @param usual the flour where none is named
   * @throws InputException if it cannot be used
   */
  public static BuildStage stage(String label, String text, Flour usual, Catalogue catalogue) {
    return new StageReader(label, text, usual, catalogue).read();
  }

  /** Reads one stage, whose parts may come in any order. */
  private static final class StageReader {
    private final String label;
    private final String text;
    private final Catalogue catalogue;
    private Flour flour;
    private Optional<String> name = Optional.empty();
    private Optional<String> parts = Optional.empty();
    private OptionalDouble doughYield = OptionalDouble.empty();
    private Optional<Temperature> temperature = Optional.empty();
    private OptionalDouble hours = OptionalDouble.empty();

    StageReader(String label, String text, Flour usual, Catalogue catalogue) {
      this.label = label;
      this.text = text;
      this.flour = usual;
      this.catalogue = catalogue;
    }

    BuildStage read() {
      String clean = Quantities.clean(text);
      Checks.inRange("length of " + label, clean.length(), 1, 200, "characters");
      for (String part : parted(clean)) {
        take(part.strip(), Vocabulary.plain(part));
      }
      FeedRatio ratio = ratio(parts.orElseThrow(() -> missing("its parts starter:flour:water")));
      Temperature at = temperature.orElseThrow(() -> missing("its temperature"));
      return Quantities.named(
          label, text, () -> new BuildStage(name, ratio, doughYield, flour, at, hours));
    }

    /**
     * Parted by commas; one between digits without a space is a decimal comma unless only as a
     * parting one it makes sense, as in {@code 1:5:5,26C,6h}.
     */
    private List<String> parted(String clean) {
      List<String> parted = new ArrayList<>();
      for (String part : clean.split(", |; ?")) {
        List<List<String>> readings = readings(part.strip());
        if (readings.size() > 1) {
          throw new InputException(
              "stages.commas",
              Quantities.shown(label, text)
                  + " can be read as "
                  + String.join(" and ", readings.get(0))
                  + " or as "
                  + String.join(" and ", readings.get(1))
                  + ": put a space after each comma that parts");
        }
        parted.addAll(readings.isEmpty() ? List.of(part) : readings.get(0));
      }
      return parted;
    }

    /** All ways to part a text at commas without spaces into what a stage has, each once. */
    private List<List<String>> readings(String part) {
      List<List<String>> readings = new ArrayList<>();
      for (int at = part.indexOf(','); at >= 0; at = part.indexOf(',', at + 1)) {
        String first = part.substring(0, at);
        Kind kind = kind(first);
        if (kind != Kind.NONE) {
          readings(part.substring(at + 1)).stream()
              .filter(rest -> kind == Kind.WORDS || rest.stream().noneMatch(is(kind)))
              .map(rest -> Stream.concat(Stream.of(first), rest.stream()).toList())
              .forEach(readings::add);
        }
      }
      if (kind(part) != Kind.NONE) {
        readings.add(List.of(part));
      }
      return readings;
    }

    private Predicate<String> is(Kind kind) {
      return part -> kind(part) == kind;
    }

    private Kind kind(String part) {
      String plain = Vocabulary.plain(part);
      return PLAIN.entrySet().stream()
          .filter(each -> each.getValue().matcher(plain).matches())
          .map(Map.Entry::getKey)
          .findFirst()
          .orElse(isUntilRipe(plain) ? Kind.HOURS : Kind.NONE);
    }

    private void take(String part, String plain) {
      Matcher yields = YIELD.matcher(plain);
      if (yields.matches()) {
        doughYield = OptionalDouble.of(Quantities.number(label, yields.group(1), 145, 300));
      } else if (PARTS.matcher(plain).matches()) {
        once(parts.isPresent(), "its parts");
        parts = Optional.of(part);
      } else if (TEMPERATURE.matcher(plain).matches()) {
        once(temperature.isPresent(), "its temperature");
        temperature = Optional.of(Quantities.temperature(label, part));
      } else if (HOURS.matcher(plain).matches()) {
        once(hours.isPresent(), "its hours");
        hours = OptionalDouble.of(Quantities.hours(label, part));
      } else if (!isUntilRipe(plain)) {
        flourOrName(part);
      }
    }

    private void once(boolean given, String what) {
      if (given) {
        throw new InputException(
            "stages.said-twice",
            Quantities.shown(label, text) + " says " + what + " twice: keep one of them");
      }
    }

    private boolean isUntilRipe(String plain) {
      return catalogue
          .vocabulary()
          .meant(Vocabulary.Kind.VALUE, plain, List.of("until ripe"))
          .isPresent();
    }

    private void flourOrName(String part) {
      boolean mix = part.indexOf('%') >= 0;
      try {
        flour = catalogue.flour(label, part);
      } catch (InputException e) {
        if (mix || name.isPresent()) {
          throw e;
        }
        name = Optional.of(Shorten.to(part, 40));
      }
    }

    private FeedRatio ratio(String typed) {
      if (doughYield.isPresent()) {
        String[] two = typed.split(" ?: ?");
        if (two.length != 2) {
          throw new InputException(
              "stages.water-twice",
              Quantities.shown(label, text)
                  + " gives its water twice: with a dough yield write two parts, starter:flour, for"
                  + " example 1:5");
        }
        return core(Quantities.feedRatio(label, typed + ":0"));
      }
      return core(Quantities.feedRatio(label, typed));
    }

    private static FeedRatio core(Quantities.FeedRatio typed) {
      return new FeedRatio(typed.starter(), typed.flour(), typed.water());
    }

    private InputException missing(String what) {
      return new InputException(
          "stages.lacking",
          Quantities.shown(label, text)
              + " lacks "
              + what
              + ": write for example "
              + label
              + " "
              + EXAMPLE);
    }
  }
}
