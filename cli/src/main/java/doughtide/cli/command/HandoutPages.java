package doughtide.cli.command;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.args.Variation;
import doughtide.cli.file.RosterFile;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.DoughOptions;
import doughtide.cli.options.FlourOptions;
import doughtide.cli.options.HandoutOptions;
import doughtide.cli.options.PrintedNames;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.session.Environment;
import doughtide.core.document.RosterDocument;
import doughtide.core.document.RosterEntry;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.StarterShare;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.flourtrial.BowlPlan;
import doughtide.core.flourtrial.BowlTest;
import doughtide.core.flourtrial.Scale;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Share;
import doughtide.core.quantity.Temperature;
import doughtide.report.handout.BakeSheet;
import doughtide.report.handout.BlankForm;
import doughtide.report.handout.Comparison;
import doughtide.report.handout.ComparisonPage;
import doughtide.report.handout.Handout;
import doughtide.report.handout.HandoutDough;
import doughtide.report.handout.Handouts;
import doughtide.report.handout.StudentPage;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** Reads what a page is about and asks for the page. */
final class HandoutPages {

  private static final String TITLE = "title";
  private static final String FLOUR_NAME = "flour-name";
  private static final String VARY = "vary";
  private static final String RISE = "rise";
  private static final double USUAL_LOAF_GRAMS = 850; // as of --piece
  private static final String JAR_HEIGHT = "jar-height";
  private static final String LINES = "lines";

  private static final int TABLE_MEMBERS = 128;

  /** The night of the wall table where none is asked for. */
  private static final Proof USUAL_NIGHT = Proof.inCold(Temperature.ofCelsius(4), 12);

  private final Arguments arguments;
  private final Environment environment;
  private final HandoutOptions options;
  private final DoughOptions dough;

  public HandoutPages(Arguments arguments, Environment environment, HandoutOptions options) {
    this.arguments = arguments;
    this.environment = environment;
    this.options = options;
    this.dough = DoughOptions.read(arguments, environment);
    PrintedNames.tell(
        Stream.of(TITLE, FLOUR_NAME).flatMap(each -> arguments.text(each).stream()).toList(),
        arguments);
  }

  public static List<OptionSpec> specs() {
    return List.of(
        OptionSpec.value(
            TITLE, "TEXT", "Quayside bread class", "The heading, instead of the usual."),
        OptionSpec.value(
            FLOUR_NAME, "TEXT", "Harrow white", "What the flour is called on the page."),
        OptionSpec.value(
                VARY,
                "LIST",
                "dough-temp:20C,23C,26C",
                "What is changed: dough-temp, starter, prefermented, hydration or flour (flours"
                    + " apart by semicolons) for comparison; rows and columns of hours-table"
                    + " (dough-temp, starter) and starter-page (dough-temp, ratio).")
            .repeatable(),
        OptionSpec.value(RISE, "RISE", "75%", "The rise that comparison, table and why tell of.")
            .withDefault("50%"),
        OptionSpec.value(
            RosterFile.OPTION,
            "FILE",
            "roster.csv",
            "class-pages: who is in the class, with the heading name;flour;loaves;language."),
        OptionSpec.value(
            JAR_HEIGHT,
            "HEIGHT",
            "62mm",
            "jar-strip: height of the dough in the jar right after mixing, 20 to 200 mm."),
        OptionSpec.value(LINES, "COUNT", "10", "readings-log: how many lines, 1 to 30.")
            .withDefault("12"),
        OptionSpec.value(
                FlourOptions.BOWL_FLOUR, "MASS", "50g", "bowl-worksheet: flour in each bowl.")
            .withDefault("50g"),
        OptionSpec.value(
                FlourOptions.DRIEST,
                "SHARE",
                "55%",
                "bowl-worksheet: hydration of the driest bowl.")
            .withDefault("60%; 80% for rye"),
        OptionSpec.value(
                FlourOptions.WETTEST,
                "SHARE",
                "90%",
                "bowl-worksheet: hydration of the wettest bowl.")
            .withDefault("80%; 100% for rye"),
        OptionSpec.value(FlourOptions.STEP, "SHARE", "4%", "bowl-worksheet: step between bowls.")
            .withDefault("4%"),
        OptionSpec.value(
                FlourOptions.SCALE,
                "MASS",
                "0.1g",
                "bowl-worksheet: the smallest step of the scale.")
            .withDefault("1g"));
  }

  /**
   * A file of pages.
   *
   * @param suffix of its name; empty for the file that was named
   */
  record Named(String suffix, Handout handout) {}

  /** All files that a class needs for one dough; what is asked is the exercise. */
  public List<Named> classPages() {
    HandoutDough about = withTemperature();
    ComparisonPage comparison = comparison();
    List<Named> files = new ArrayList<>();
    files.add(new Named("", comparison.exercise(ComparisonPage.Edition.STUDENT)));
    files.add(new Named("answers", comparison.exercise(ComparisonPage.Edition.TEACHER)));
    files.add(new Named("wall", hoursTable()));
    files.add(new Named("log", log()));
    arguments
        .text(RosterFile.OPTION)
        .ifPresent(file -> files.add(new Named("students", students(file, about))));
    return files;
  }

  /** A page a student, each in her own language; doughs that are equal are computed once. */
  private Handout students(String file, HandoutDough about) {
    RosterDocument roster = RosterFile.read(file, environment);
    Optional<ZonedDateTime> mixedAt = clock().map(ClockTimes::start);
    Optional<Proof> proof = proof(about);
    double loaf = proof.map(each -> each.mass().grams()).orElse(USUAL_LOAF_GRAMS);
    Map<List<Object>, BakeSheet> sheets = new HashMap<>();
    List<Handout> pages = new ArrayList<>();
    PrintedNames.tell(roster.entries().stream().map(RosterEntry::name).toList(), arguments);
    for (RosterEntry entry : roster.entries()) {
      DoughFormula formula =
          entry
              .flour()
              .map(flour -> about.formula().toBuilder().flour(flour).build())
              .orElse(about.formula());
      Words own =
          entry.language().map(Language::of).map(options.words()::of).orElse(options.words());
      BakeSheet sheet =
          sheets.computeIfAbsent(
              List.of(formula, own.language()),
              key -> Handouts.in(own).bakeSheet(about.with(formula), mixedAt, proof));
      pages.add(
          new StudentPage(
              entry.name(),
              entry.loaves(),
              formula.forDough(Mass.ofGrams(loaf * entry.loaves())),
              sheet,
              own));
    }
    return together(pages);
  }

  /** The page asked for. */
  public Handout handout() {
    return switch (options.kind()) {
      case BAKE_SHEET -> bakeSheet();
      case COMPARISON -> comparison();
      case HOURS_TABLE -> hoursTable();
      case WHY_IT_RISES -> handouts().whyItRises(withTemperature(), rise());
      case BOWL_WORKSHEET -> bowls();
      case READINGS_LOG -> log();
      case STARTER_PAGE -> starterPage();
      case FIRST_EVENING -> firstEvening();
      case JAR_STRIP -> jarStrip();
      case HAND_SHEET -> handSheet();
      case CLASS_PAGES -> classPages().get(0).handout();
    };
  }

  private Handout log() {
    return BlankForm.readingsLog(
        options.words(), Optional.of(named()), arguments.count(LINES, 1, 30).orElse(12));
  }

  /** The page for students and the one for the teacher. */
  public ComparisonPage comparison() {
    List<Variation> variations = variations(1, "one --vary");
    Variation vary =
        variations.isEmpty() ? Variation.parse("dough-temp:20C,23C,26C") : variations.get(0);
    Comparison comparison =
        switch (vary.subject()) {
          case DOUGH_TEMP -> {
            HandoutDough base = named();
            yield Comparison.ofTemperatures(base, vary.temperatures());
          }
          case STARTER, PREFERMENTED ->
              Comparison.ofStarterShares(withTemperature(), vary.starterShares());
          case HYDRATION -> Comparison.ofHydrations(withTemperature(), vary.shares());
          case FLOUR -> Comparison.ofFlours(withTemperature(), vary.flours(arguments.catalogue()));
          case RATIO -> throw notHere(vary.subject());
        };
    return handouts().comparison(comparison, rise());
  }

  private InputException notHere(Variation.Subject subject) {
    return new InputException(
        options.kind().typed()
            + " cannot change "
            + subject.typed()
            + ": see doughtide handout --help for what it can");
  }

  private List<Variation> variations(int most, String words) {
    List<Variation> variations = arguments.all(VARY).stream().map(Variation::parse).toList();
    if (variations.size() > most) {
      throw new InputException(
          options.kind().typed() + " takes " + words + ", " + variations.size() + " were given");
    }
    return variations;
  }

  private Handouts handouts() {
    Handouts handouts = Handouts.in(options.words());
    return arguments.text(TITLE).map(handouts::titled).orElse(handouts);
  }

  private Rise rise() {
    Rise rise = arguments.rise(RISE).orElse(Rise.ofPercent(50));
    Checks.inRange("--" + RISE, rise.percent(), 1, 1000, "%");
    return rise;
  }

  /** The dough; without a temperature it has one that is not looked at. */
  private HandoutDough named() {
    DoughFormula formula =
        arguments
            .text(FLOUR_NAME)
            .map(
                name ->
                    dough.formula().toBuilder()
                        .flour(dough.formula().flour().withName(name))
                        .build())
            .orElse(dough.formula());
    return dough
        .temperature()
        .map(steps -> new HandoutDough(formula, steps.steps()))
        .orElseGet(() -> HandoutDough.steady(formula, Temperature.ofCelsius(24)));
  }

  private HandoutDough withTemperature() {
    dough.doughTemperature(arguments);
    return named();
  }

  private Handout bakeSheet() {
    HandoutDough about = withTemperature();
    return handouts().bakeSheet(about, clock().map(ClockTimes::start), proof(about));
  }

  private Optional<ClockTimes> clock() {
    return ClockOptions.read(arguments, environment);
  }

  private Optional<Proof> proof(HandoutDough about) {
    return ProofOptions.read(arguments, clock())
        .map(
            each ->
                each.chosen(
                    RiseForecaster.standard().forecast(about.formula(), about.doughTemperature())))
        .map(proof -> ColdOptions.kept(arguments, environment, proof));
  }

  private Handout handSheet() {
    HandoutDough about = withTemperature();
    return handouts().handSheet(about, clock().map(ClockTimes::start), proof(about), rise());
  }

  private Handout jarStrip() {
    HandoutDough about = withTemperature();
    double startMm =
        arguments
            .text(JAR_HEIGHT)
            .map(text -> Quantities.millimetres("--" + JAR_HEIGHT, text))
            .orElseThrow(() -> arguments.missing(JAR_HEIGHT));
    return handouts()
        .jarStrip(about, clock().map(ClockTimes::start), proof(about), rise(), startMm);
  }

  private Handout firstEvening() {
    HandoutDough about = named();
    return handouts()
        .firstEvening(
            about.formula().starter(),
            about.formula().flour(),
            about.temperature().get(0).temperature(),
            clock().map(ClockTimes::start));
  }

  private Handout hoursTable() {
    List<Temperature> temperatures = celsius(18, 20, 22, 24, 26, 28, 30);
    List<StarterShare> shares =
        DoubleStream.of(5, 10, 20, 30)
            .mapToObj(percent -> StarterShare.ofAddedFlour(Share.ofPercent(percent)))
            .toList();
    for (Variation vary : variations(2, "at most two --vary")) {
      switch (vary.subject()) {
        case DOUGH_TEMP -> temperatures = vary.temperatures();
        case STARTER, PREFERMENTED -> shares = vary.starterShares();
        default -> throw notHere(vary.subject());
      }
    }
    return wall(
        temperatures, shares, named().formula(), rise(), proof(named()).orElse(USUAL_NIGHT));
  }

  /** Computed when it is printed, as it takes long: what cannot be done is refused before. */
  private Handout wall(
      List<Temperature> temperatures,
      List<StarterShare> shares,
      DoughFormula formula,
      Rise rise,
      Proof night) {
    Handouts handouts = handouts();
    return (format, words, date) ->
        together(handouts.wall(formula, temperatures, shares, rise, night))
            .pages(format, words, date);
  }

  private static Handout together(List<Handout> handouts) {
    return (format, words, date) ->
        handouts.stream().flatMap(each -> each.pages(format, words, date).stream()).toList();
  }

  private static List<Temperature> celsius(double... values) {
    return DoubleStream.of(values).mapToObj(Temperature::ofCelsius).toList();
  }

  private Handout starterPage() {
    List<Temperature> temperatures = celsius(18, 20, 22, 25, 28);
    double water = dough.formula().starter().hydration().fraction();
    List<FeedRatio> ratios = new ArrayList<>();
    for (double flour : new double[] {1, 2, 5, 10}) {
      ratios.add(FeedRatio.oneTo(flour, Share.ofFraction(water)));
    }
    for (Variation vary : variations(2, "at most two --vary")) {
      switch (vary.subject()) {
        case DOUGH_TEMP -> temperatures = vary.temperatures();
        case RATIO -> ratios = vary.ratios();
        default -> throw notHere(vary.subject());
      }
    }
    Feeding feeding =
        Feeding.of(new FeedRatio(1, 1, water))
            .withStarter(dough.formula().starter())
            .withFlour(named().formula().flour())
            .withAltitude(dough.formula().altitude());
    return handouts()
        .with(RiseForecaster.standard().withMembers(TABLE_MEMBERS))
        .starterPage(feeding, temperatures, ratios);
  }

  private Handout bowls() {
    Flour flour = named().formula().flour();
    BowlTest test = BowlTest.of(flour);
    BowlPlan plan =
        BowlPlan.of(
            arguments.mass(FlourOptions.BOWL_FLOUR).orElse(Mass.ofGrams(50)),
            arguments.share(FlourOptions.DRIEST).orElse(test.driest()),
            arguments.share(FlourOptions.WETTEST).orElse(test.wettest()),
            arguments.share(FlourOptions.STEP).orElse(Share.ofPercent(4)),
            arguments
                .mass(FlourOptions.SCALE)
                .map(mass -> new Scale(mass.grams()))
                .orElse(Scale.ONE_GRAM));
    return BlankForm.bowls(options.words(), flour, plan);
  }
}
