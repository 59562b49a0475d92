package doughtide.cli.hand;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.ClockTimes;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.ColdOptions;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.options.ProofOptions;
import doughtide.cli.options.StarterOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.learning.Bake;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.LiveDough;
import doughtide.core.learning.LoafResult;
import doughtide.core.learning.Reading;
import doughtide.core.learning.ReadingDoubt;
import doughtide.core.learning.TargetBelief;
import doughtide.core.loaf.Cold;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Rise;
import doughtide.core.rise.DoughTemperature;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;

/** A dough that is rising now, described by its file of readings. */
public final class DoughInHand {

  /** The option that tells what the clock says now. */
  public static final String NOW = "now";

  private static final String HOLD = "hold";
  private static final String BAKE_AT = "bake-at";
  private static final double LONGEST_HOURS = 240;
  private static final double SOON_HOURS = 0.1;
  private static final Rise HALF = Rise.ofPercent(50);
  private static final int ALIKE = 256; // spread by their hours, worth the first 512

  /**
   * A reading that can hardly be of this dough.
   *
   * @param reading what was read
   * @param doubt the likely reason
   */
  record Doubted(Reading reading, ReadingDoubt doubt) {}

  private final ReadingsFile file;
  private final Arguments arguments;
  private final Environment environment;
  private final Optional<LearnedStarter> starter;
  private final LiveDough read;
  private final LiveDough fresh;
  private final List<Doubted> doubted;
  private Optional<Proof> proof = Optional.empty(); // each worked out once
  private Optional<LiveDough> live = Optional.empty();
  private Optional<LiveDough> first = Optional.empty();
  private Optional<RiseForecast> alike = Optional.empty();
  private Optional<PlannedLoaf> loaf = Optional.empty();

  private DoughInHand(
      ReadingsFile file,
      Arguments arguments,
      Environment environment,
      Optional<LearnedStarter> starter,
      LiveDough read,
      LiveDough fresh,
      List<Doubted> doubted) {
    this.file = file;
    this.arguments = arguments;
    this.environment = environment;
    this.starter = starter;
    this.read = read;
    this.fresh = fresh;
    this.doubted = List.copyOf(doubted);
  }

  /**
   * Reads the file named by --readings.
   *
   * @param described options that the file takes the place of
   * @throws InputException if one of them was given, or the file cannot be used
   */
  public static DoughInHand read(Arguments arguments, List<OptionSpec> described, Session session) {
    for (OptionSpec option : described) {
      if (arguments.has(option.name())) {
        throw new InputException(
            option.typed()
                + " is not used together with --"
                + StarterOptions.READINGS
                + ": the file describes the dough at its top");
      }
    }
    String name = arguments.text(StarterOptions.READINGS).orElseThrow();
    ReadingsFile file =
        ReadingsFile.inHand(
            "--" + StarterOptions.READINGS, name, ReadingsFile.badLines(arguments), session);
    return of(file, arguments, session.environment());
  }

  /**
   * What is believed of a dough.
   *
   * @param file its readings so far
   * @param given what was asked; the plan of the file stands in for what was not
   */
  public static DoughInHand of(ReadingsFile file, Arguments given, Environment environment) {
    Arguments arguments = KitchenOptions.beside(given, plan(file.document(), given), environment);
    Optional<LearnedStarter> starter = StarterOptions.starter(arguments, environment);
    RiseForecaster forecaster = StarterOptions.believing(arguments, environment);
    Bake bake = file.bake();
    DoughTemperature start = file.document().head().planned().orElse(bake.temperature());
    JarError jar = starter.map(LearnedStarter::jar).orElseGet(JarError::standard);
    List<Doubted> doubted = new ArrayList<>();
    LiveDough read =
        LiveDough.of(
            forecaster, jar, bake, (reading, doubt) -> doubted.add(new Doubted(reading, doubt)));
    LiveDough fresh =
        start.equals(bake.temperature())
            ? read
            : LiveDough.of(forecaster, jar, bake.formula(), start);
    return new DoughInHand(file, arguments, environment, starter, read, fresh, doubted);
  }

  /** What the head says of the loaf; an oven hour that was given takes the place of a hold. */
  private static Map<String, String> plan(ReadingsDocument document, Arguments given) {
    Map<String, String> plan = new LinkedHashMap<>(document.head().plan());
    for (String option : List.of(HOLD, BAKE_AT)) {
      if (given.offers(option) && given.has(option)) {
        plan.remove(option.equals(HOLD) ? BAKE_AT : HOLD);
      }
    }
    return plan;
  }

  /** The loaf, once it has been shaped. */
  Optional<ShapedLoaf> shapedLoaf() {
    OptionalDouble inCold = file.document().head().core().intoColdHours();
    return planned()
        .flatMap(
            plan -> {
              OptionalDouble at = file.document().head().shapedHours();
              double roomHours = plan.roomHours();
              OptionalDouble shaped =
                  at.isPresent() || inCold.isEmpty()
                      ? at
                      : OptionalDouble.of(inCold.getAsDouble() - roomHours);
              return shaped.isEmpty()
                  ? Optional.empty()
                  : ShapedLoaf.of(alike(), plan, shaped.getAsDouble(), inCold);
            });
  }

  /** A loaf that came out so, with what it likely had risen at the oven as it was shaped. */
  public TargetBelief.Loaf judged(LoafResult result) {
    OptionalDouble risen =
        shapedLoaf().map(loaf -> loaf.night().riseAtBake().likely()).orElse(OptionalDouble.empty());
    Rise target =
        planned().flatMap(Proof::target).orElseGet(() -> file.bake().formula().targetRise());
    return risen.isEmpty()
        ? new TargetBelief.Loaf(result, 1)
        : TargetBelief.Loaf.of(result, Rise.ofPercent(risen.getAsDouble()), target);
  }

  /** Its file. */
  public ReadingsFile file() {
    return file;
  }

  /** What was asked, with the plan of the file and what came from the kitchen. */
  public Arguments arguments() {
    return arguments;
  }

  /** What was learned of its starter before, if that is known. */
  public Optional<LearnedStarter> starter() {
    return starter;
  }

  /** Clock times, if it is known when the dough was mixed. */
  public Optional<ClockTimes> clock() {
    return file.clock();
  }

  /** What was expected when it was mixed. */
  public RiseForecast first() {
    return firstLive().expected();
  }

  /** When it was to be shaped when it was mixed, if a loaf is planned. */
  Optional<ShapeForecaster.Point> firstShape() {
    return planned().map(plan -> firstLive().expectedShape());
  }

  /** At the temperature that was expected when it was mixed. */
  private LiveDough firstLive() {
    first = first.or(() -> Optional.of(fresh == read ? live() : planned(fresh)));
    return first.get();
  }

  /** The belief with its readings, and with the loaf that is planned. */
  public LiveDough live() {
    live = live.or(() -> Optional.of(planned(read)));
    return live.get();
  }

  private LiveDough planned(LiveDough dough) {
    return planned().map(dough::shapedFor).orElse(dough);
  }

  /** The readings that can hardly be of this dough, in order. */
  public List<Doubted> doubted() {
    return doubted;
  }

  /** What is expected now. */
  public RiseForecast forecast() {
    return live().forecast();
  }

  /** The same told by doughs that count alike, for whoever follows some of them. */
  RiseForecast alike() {
    alike = alike.or(() -> Optional.of(forecast(forecast().hours())));
    return alike.get();
  }

  /** The highest rise read so far, as a fraction; 0 without readings. */
  double highest() {
    return file.bake().readings().stream()
        .flatMap(reading -> reading.rise().stream())
        .mapToDouble(Rise::fraction)
        .max()
        .orElse(0);
  }

  /** Of some rises the one that is asked for: half as much again, or the next one to come. */
  public Rise asked(SortedSet<Rise> rises) {
    return HALF.fraction() > highest()
        ? HALF
        : rises.stream().filter(each -> each.fraction() > highest()).findFirst().orElse(HALF);
  }

  /**
   * The rise that is awaited: what the jar shows when it is time to shape, else the one asked for.
   */
  public Rise awaited(SortedSet<Rise> rises) {
    return shaped()
        .map(shape -> Rise.ofPercent(shape.rise().likely().orElseThrow()))
        .orElseGet(() -> asked(rises));
  }

  /** When the dough is likely there, by what is known now; hours since mixing. */
  public OptionalDouble likely(SortedSet<Rise> rises) {
    return shaped()
        .map(ShapeForecast::hours)
        .orElseGet(() -> forecast().hoursToRise(asked(rises)))
        .likely();
  }

  /** When it was likely there before any reading. */
  public OptionalDouble expected(SortedSet<Rise> rises) {
    return shaped()
        .flatMap(shape -> firstShape())
        .map(ShapeForecaster.Point::hours)
        .orElseGet(() -> first().hoursToRise(asked(rises)))
        .likely();
  }

  /** If there is an hour to shape. */
  private Optional<ShapeForecast> shaped() {
    return loaf().map(PlannedLoaf::shape).filter(shape -> shape.rise().likely().isPresent());
  }

  /** When to look next for a rise; nothing where that would be now. */
  public OptionalDouble nextLookHours(Rise rise) {
    OptionalDouble at = live().nextLookHours(rise);
    boolean ahead = at.isPresent() && at.getAsDouble() > nowHours() + SOON_HOURS;
    return ahead ? at : OptionalDouble.empty();
  }

  /** The loaf that is planned, as it is expected now. */
  public Optional<PlannedLoaf> loaf() {
    loaf = loaf.or(() -> planned().map(plan -> new PlannedLoaf(plan, live().shapeForecast())));
    return loaf;
  }

  /** What is expected now, told for so many hours by doughs that count alike. */
  public RiseForecast forecast(double hours) {
    return drawn(live(), hours);
  }

  private static RiseForecast drawn(LiveDough dough, double hours) {
    RiseForecast now = dough.forecast();
    return now.drawn(Math.min(ALIKE, now.ensemble().size()), hours);
  }

  /**
   * The proof that is planned, with all that is known of its cold: of several mornings the first
   * for which a loaf could be ready.
   */
  Optional<Proof> planned() {
    proof = proof.or(() -> ProofOptions.read(arguments, clock()).map(this::planned));
    if (proof.isEmpty() && !core().readings().isEmpty()) {
      throw withoutCold();
    }
    return proof;
  }

  /**
   * What is known of its cold after the readings of its probe.
   *
   * @param known of the same cold before; empty for what its file says
   * @throws InputException if its file does not say what cold it went into
   */
  public Cold taught(Optional<Cold> known) {
    Proof plan = planned().orElseThrow(DoughInHand::withoutCold);
    Cold cold = plan.coldPlace().orElseThrow(DoughInHand::withoutCold);
    if (known.isEmpty()) {
      return cold;
    }
    Proof before = plan.withCold(cold.asKnown(known.get()));
    return ColdOptions.taught(core(), alike(), before).coldPlace().orElseThrow();
  }

  /** Keeps what the readings of its probe taught, where that is asked for. */
  public void keepCold(Arguments asked) {
    ColdOptions.keep(asked, environment, core(), planned());
  }

  private ReadingsDocument.Core core() {
    return file.document().head().core();
  }

  private static InputException withoutCold() {
    return new InputException(
        "'core temp C' says nothing without a cold and an oven hour: add --cold 4C --bake-at 07:00"
            + " to doughtide now, or lines such as 'cold: 4C' and 'bake at: 07:00' at the top of"
            + " the file");
  }

  /** With what the readings of its probe teach of the cold. */
  private Proof planned(ProofOptions options) {
    Proof chosen = chosen(options);
    if (core().readings().isEmpty()) {
      return chosen;
    }
    if (chosen.coldPlace().isEmpty()) {
      throw withoutCold();
    }
    return ColdOptions.taught(core(), drawn(read, read.forecast().hours()), chosen);
  }

  private Proof chosen(ProofOptions options) {
    List<Proof> kept =
        options.ways().stream().map(way -> ColdOptions.kept(arguments, environment, way)).toList();
    return new ProofOptions(kept).chosen(fresh.expected());
  }

  /**
   * Hours since mixing now: as told, else by the clock, or where that cannot be meant the last line
   * of the file.
   */
  public double nowHours() {
    if (arguments.offers(NOW) && arguments.has(NOW) && clock().isPresent()) {
      return Absence.hour(arguments, NOW, clock().get(), 0);
    }
    double last = Math.max(0, file.document().head().lastHours());
    double now =
        clock()
            .map(clock -> Duration.between(clock.start().toInstant(), environment.now()))
            .map(since -> since.toSeconds() / 3600.0)
            .orElse(last);
    return now >= last && now <= LONGEST_HOURS ? now : last;
  }
}
