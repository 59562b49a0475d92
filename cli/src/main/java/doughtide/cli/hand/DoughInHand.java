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
import doughtide.core.learning.Reading;
import doughtide.core.learning.ReadingDoubt;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.DoughTemperature;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A dough that is rising now, described by its file of readings. */
public final class DoughInHand {

  /** The option that tells what the clock says now. */
  public static final String NOW = "now";

  private static final String HOLD = "hold";
  private static final String BAKE_AT = "bake-at";
  private static final double LONGEST_HOURS = 240;
  private static final int MEMBERS = 256; // spread by their hours, worth the first 512

  /**
   * A reading that can hardly be of this dough.
   *
   * @param reading what was read
   * @param doubt the likely reason
   */
  public record Doubted(Reading reading, ReadingDoubt doubt) {}

  private final ReadingsFile file;
  private final Arguments arguments;
  private final Environment environment;
  private final Optional<LearnedStarter> starter;
  private final RiseForecast first;
  private final LiveDough live;
  private final List<Doubted> doubted;

  private DoughInHand(
      ReadingsFile file,
      Arguments arguments,
      Environment environment,
      Optional<LearnedStarter> starter,
      RiseForecast first,
      LiveDough live,
      List<Doubted> doubted) {
    this.file = file;
    this.arguments = arguments;
    this.environment = environment;
    this.starter = starter;
    this.first = first;
    this.live = live;
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
    LiveDough live =
        LiveDough.of(
            forecaster, jar, bake, (reading, doubt) -> doubted.add(new Doubted(reading, doubt)));
    RiseForecast first = forecaster.keepingCurves().forecast(bake.formula(), start);
    return new DoughInHand(file, arguments, environment, starter, first, live, doubted);
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
    return first;
  }

  /** The belief with its readings. */
  public LiveDough live() {
    return live;
  }

  /** The readings that can hardly be of this dough, in order. */
  public List<Doubted> doubted() {
    return doubted;
  }

  /** What is expected now, told by doughs that count alike. */
  public RiseForecast forecast() {
    boolean unread =
        file.bake().readings().isEmpty() && first.temperature().equals(file.bake().temperature());
    return unread ? first : forecast(live.forecast().hours());
  }

  /** The same for so many hours. */
  public RiseForecast forecast(double hours) {
    return live.forecast().drawn(Math.min(MEMBERS, first.ensemble().size()), hours);
  }

  /**
   * A proof and the shape point for it that was expected when the dough was mixed.
   *
   * @param proof with all that is known of its refrigerator
   * @param first when to shape, as it was expected
   */
  record Planned(Proof proof, ShapeForecaster.Point first) {
    static Planned of(Proof proof, RiseForecast first) {
      return new Planned(proof, ShapeForecaster.of(first, proof).point());
    }

    private boolean isPossible() {
      return first.hours().likely().isPresent();
    }
  }

  /** The proof that is planned: of several mornings the first for which a loaf could be ready. */
  Optional<Planned> planned() {
    return ProofOptions.read(arguments, clock()).map(options -> planned(options.ways()));
  }

  private Planned planned(List<Proof> ways) {
    List<Planned> tried = new ArrayList<>();
    for (Proof way : ways) {
      Planned planned = Planned.of(ColdOptions.kept(arguments, environment, way), first);
      if (planned.isPossible()) {
        return planned;
      }
      tried.add(planned);
    }
    return tried.get(0);
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
