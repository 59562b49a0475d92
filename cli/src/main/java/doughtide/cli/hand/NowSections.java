package doughtide.cli.hand;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.args.Speech;
import doughtide.cli.args.Words;
import doughtide.cli.file.ReadingsFile;
import doughtide.cli.options.ProofOptions;
import doughtide.core.document.ReadingsDocument;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.forecast.ReadingNoise;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.TimeWindow;
import doughtide.core.forecast.Warning;
import doughtide.core.learning.Bake;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.LoafResult;
import doughtide.core.learning.Reading;
import doughtide.core.loaf.LoafCauses;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.report.handout.FormulaWords;
import doughtide.report.words.Advice;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.stream.Collectors;

/** The dough in hand: what its readings so far say about the hours to come, as an answer. */
public final class NowSections {

  private static final int VERSION = 3;
  private static final double ON_TIME_HOURS = 0.05;
  private static final Rise HALF = Rise.ofPercent(50);
  private static final Rise QUARTER = Rise.ofPercent(25);
  private static final double STUCK_PERCENT = 10; // starting value
  private static final double MOST = 0.8;

  /** The end of bulk fermentation, or a rise: when it comes, when it was expected first. */
  private record Point(
      Optional<Rise> rise, TimeWindow now, TimeWindow first, OptionalDouble nextLookHours) {
    OptionalDouble aheadHours() {
      return now.likely().isPresent() && first.likely().isPresent()
          ? OptionalDouble.of(first.likely().getAsDouble() - now.likely().getAsDouble())
          : OptionalDouble.empty();
    }
  }

  private final Speech speech;
  private final DoughInHand dough;
  private final ReadingsFile file;
  private final RiseForecast forecast;
  private final Timeline timeline;
  private final Moments moments;
  private final Optional<Proof> planned;
  private final Optional<PlannedLoaf> loaf;
  private final Optional<ShapeForecaster.Point> jar;
  private final Optional<Point> shape;
  private final Optional<WaysOut> ways;
  private final Optional<ShapedLoaf> shaped;

  /**
   * @param whole whether the loaf after its bulk fermentation is told, too
   */
  private NowSections(DoughInHand dough, boolean whole, Speech speech) {
    this.speech = speech;
    this.dough = dough;
    this.file = dough.file();
    this.forecast = dough.forecast();
    this.timeline = Timeline.sinceMixing(dough.clock(), speech);
    this.moments = new Moments(timeline, dough.nowHours());
    this.planned = dough.planned();
    this.shaped = dough.shapedLoaf();
    this.loaf = whole && shaped.isEmpty() ? dough.loaf() : Optional.empty();
    this.jar = planned.map(plan -> dough.live().shape());
    this.shape = jar.map(this::point);
    Optional<Absence> asked = asked();
    this.ways = planned.flatMap(plan -> waysOut(plan, asked));
  }

  private Optional<Absence> asked() {
    if (!dough.arguments().offers(Absence.LEAVE_AT)) {
      return Optional.empty();
    }
    Optional<Absence> asked =
        dough.clock().flatMap(clock -> Absence.read(dough.arguments(), clock, dough.nowHours()));
    if (planned.isEmpty() && asked.isPresent()) {
      throw Absence.withoutLoaves();
    }
    return asked;
  }

  /**
   * The answer.
   *
   * @param rises the rises whose times are wanted
   * @param speech the language of its text
   */
  public static Answer of(DoughInHand dough, SortedSet<Rise> rises, Speech speech) {
    NowSections sections = new NowSections(dough, true, speech);
    List<Point> ahead =
        rises.stream()
            .filter(rise -> rise.fraction() > dough.highest())
            .map(sections::point)
            .toList();
    Section.Builder body = Section.loose(sections.timeline);
    sections.data(body);
    sections.doubts(body);
    sections.waysOut(body);
    body.add(sections.rises(ahead));
    sections.legend(ahead, body);
    sections.loaf.ifPresent(
        each -> LoafSections.add(each, sections.timeline, dough.nowHours(), body));
    sections.shaped.ifPresent(each -> LoafSections.add(each, sections.timeline, body));
    body.warnings(sections.warnings());
    sections.understood(body.section("", speech.say("now.understood")));
    body.cautions(List.of(speech.say("text.raw")));
    return Answer.of("now", VERSION, sections.headline(ahead), body)
        .fromKitchen(dough.arguments().fromKitchen())
        .withTable(() -> sections.table(ahead));
  }

  /**
   * The answer in a few lines, below what was done.
   *
   * @param command its name
   * @param done in a sentence
   * @param speech the language of its text
   */
  public static Answer brief(String command, String done, DoughInHand dough, Speech speech) {
    NowSections sections = new NowSections(dough, false, speech);
    Section.Builder body = Section.loose(sections.timeline);
    Point half = sections.point(HALF);
    sections.data(body);
    sections.doubts(body);
    sections.jar.ifPresent(
        point ->
            body.window("shape", "", point.hours())
                .number("jarPercent", "", point.rise().likely(), Unit.PERCENT));
    body.window("halfRisen", "", half.now());
    body.warnings(sections.forecast.warnings());
    return Answer.of(command, VERSION, done + "\n" + sections.headline(List.of(half)), body)
        .fromKitchen(dough.arguments().fromKitchen());
  }

  /**
   * What may have made the loaf come out as it did.
   *
   * @param done in a sentence
   * @param speech the language of its text
   */
  public static Answer ofResult(String done, LoafResult result, DoughInHand dough, Speech speech) {
    Section.Builder body = Section.loose(Timeline.sinceMixing(dough.clock(), speech));
    body.word("bake", "", dough.file().bake().name()).word("result", "", result, "");
    List<LoafCauses.Likely> causes =
        result == LoafResult.RIGHT ? List.of() : causes(dough, result == LoafResult.OVER);
    Listing.Builder rows =
        body.listing("causes", causes.isEmpty() ? "" : speech.say("now.tenSuchDoughs"));
    for (LoafCauses.Likely each : causes) {
      long tenths = Math.round(10 * each.share());
      String text = cause(each, result, speech);
      rows.row()
          .say(tenths == 0 ? "" : speech.say("now.ofTen"), Long.toString(tenths))
          .number("share", "", each.share(), Unit.SHARE)
          .word("cause", "", each.cause(), "")
          .word("text", tenths == 0 ? "" : speech.say("now.because"), text);
    }
    String likeliest =
        causes.stream()
            .findFirst()
            .map(each -> cause(each, result, speech))
            .map(text -> "\n" + speech.say("now.likeliest", Map.of("cause", text)))
            .orElse("");
    return Answer.of("note", VERSION, done + likeliest, body)
        .fromKitchen(dough.arguments().fromKitchen());
  }

  private static String cause(LoafCauses.Likely cause, LoafResult result, Speech speech) {
    return Speech.plain(Advice.of(speech.words(), cause.cause(), result == LoafResult.OVER));
  }

  /** Where nobody noted it, the loaf was shaped when the forecast with its readings says. */
  private static List<LoafCauses.Likely> causes(DoughInHand dough, boolean over) {
    Optional<Proof> proof = dough.planned();
    if (proof.isEmpty()) {
      return List.of();
    }
    OptionalDouble shaped =
        dough
            .shapedLoaf()
            .map(loaf -> OptionalDouble.of(Math.max(loaf.hours() - loaf.proof().restHours(), 0)))
            .orElseGet(() -> dough.live().shape().hours().likely());
    if (shaped.isEmpty()) {
      return List.of();
    }
    return over
        ? LoafCauses.ofOver(dough.alike(), proof.get(), shaped.getAsDouble())
        : LoafCauses.ofUnder(dough.alike(), proof.get(), shaped.getAsDouble());
  }

  private void data(Section.Builder body) {
    body.word("bake", "", file.bake().name())
        .number("readings", "", file.given(), Unit.COUNT)
        .number(
            "learnedFromBakes",
            "",
            dough.starter().map(LearnedStarter::bakes).orElse(0),
            Unit.COUNT)
        .number("nowHours", "", dough.nowHours(), Unit.HOURS);
    shape.ifPresent(
        point ->
            body.number("aheadHours", "", point.aheadHours(), Unit.HOURS)
                .number("nextLookHours", "", point.nextLookHours(), Unit.HOURS));
  }

  private Point point(ShapeForecaster.Point at) {
    OptionalDouble percent = at.rise().likely();
    return new Point(
        Optional.empty(),
        at.hours(),
        dough.firstShape().orElseThrow().hours(),
        percent.isPresent() ? dough.nextLookHours(Rise.ofPercent(percent.getAsDouble())) : percent);
  }

  private Point point(Rise rise) {
    return new Point(
        Optional.of(rise),
        forecast.hoursToRise(rise),
        dough.first().hoursToRise(rise),
        forecast.isPossible() ? dough.nextLookHours(rise) : OptionalDouble.empty());
  }

  private Optional<WaysOut> waysOut(Proof plan, Optional<Absence> asked) {
    if (!forecast.isPossible() || dough.clock().isEmpty() || shaped.isPresent()) {
      return Optional.empty();
    }
    Point point = shape.orElseThrow();
    Optional<Absence> late =
        WaysOut.late(point.first().likely(), point.now().likely(), plan, dough.nowHours());
    return asked
        .or(() -> late)
        .map(absence -> WaysOut.of(dough, plan, absence, asked.isEmpty()))
        .filter(found -> !found.options().isEmpty());
  }

  private String headline(List<Point> ahead) {
    if (!forecast.isPossible()) {
      return speech.say("now.none");
    }
    Optional<Point> rise =
        ahead.stream()
            .filter(each -> each.rise().equals(Optional.of(HALF)))
            .findFirst()
            .or(() -> ahead.stream().findFirst());
    if (shaped.isPresent()) {
      return shaped.get().headline(moments, speech);
    }
    if (planned.isPresent()) {
      return shapeHeadline(shape.orElseThrow());
    }
    OptionalDouble since = shapedHours();
    if (since.isPresent()) {
      return speech.say("now.shapedOnly", Map.of("time", moments.of(since)));
    }
    return rise.map(this::headline).orElseGet(this::beyond);
  }

  /** When it was noted that the loaf was shaped, or else went into the cold. */
  private OptionalDouble shapedHours() {
    ReadingsDocument.Head head = file.document().head();
    return head.shapedHours().isPresent() ? head.shapedHours() : head.core().intoColdHours();
  }

  /** The jar was read beyond all rises whose times are wanted. */
  private String beyond() {
    String read = LoafSections.whole(100 * dough.highest());
    return LongPast.pastBest(dough, speech)
        .orElseGet(() -> speech.say("now.beyond", Map.of("rise", read)));
  }

  private String shapeHeadline(Point point) {
    OptionalDouble likely = point.now().likely();
    if (likely.isEmpty()) {
      List<Warning> why = dough.loaf().orElseThrow().shape().warnings();
      return Advice.of(speech.words(), why.get(why.size() - 1)).sentences();
    }
    String shows = LoafSections.likely(jar.orElseThrow().rise());
    Map<String, String> values =
        Map.of("time", moments.of(likely), "rise", shows, "look", look(point));
    double shapeHours = likely.getAsDouble();
    if (LongPast.isLong(shapeHours, dough.nowHours())) {
      return bestWay()
          + LongPast.sentences(dough, planned.orElseThrow(), shapeHours, moments, speech);
    }
    return bestWay()
        + speech.say(shapeHours > dough.nowHours() ? "now.shape" : "now.shapeNow", values)
        + "\n"
        + pace(point)
        + readHigher(shapeHours);
  }

  /** The last reading, if it has the rise to shape at though that is to come. */
  private String readHigher(double shapeHours) {
    long shown = Math.round(jar.orElseThrow().rise().likely().orElseThrow());
    return lastRise()
        .filter(reading -> shapeHours > dough.nowHours() && Math.round(percent(reading)) >= shown)
        .map(
            reading -> {
              Rise rise = reading.rise().orElseThrow();
              long points = Math.round(100 * ReadingNoise.standard().riseDeviation(rise));
              Map<String, String> values =
                  Map.of(
                      "rise", speech.percent(rise.percent()),
                      "time", moments.of(OptionalDouble.of(reading.hours())),
                      "points", Long.toString(points));
              return "\n" + speech.say("now.readHigher", values);
            })
        .orElse("");
  }

  private Optional<Reading> lastRise() {
    return file.bake().readings().stream()
        .filter(reading -> reading.rise().isPresent())
        .reduce((before, last) -> last);
  }

  private static double percent(Reading reading) {
    return reading.rise().orElseThrow().percent();
  }

  private String headline(Point point) {
    String rise = speech.percent(point.rise().orElseThrow().percent());
    OptionalDouble likely = point.now().likely();
    if (likely.isEmpty()) {
      return speech.say("now.never", Map.of("rise", rise)) + "\n" + pace(point);
    }
    Map<String, String> values =
        Map.of("rise", rise, "time", moments.of(likely), "look", look(point));
    if (!LongPast.isLong(likely.getAsDouble(), dough.nowHours())) {
      return speech.say("now.risen", values) + "\n" + pace(point);
    }
    String since = speech.say("now.risenSince", values);
    return LongPast.pastBest(dough, speech)
        .map(advice -> advice + "\n" + since)
        .orElse(since + "\n" + pace(point));
  }

  private String look(Point point) {
    return point.nextLookHours().isPresent()
        ? speech.say("now.look", Map.of("time", moments.of(point.nextLookHours())))
        : speech.say("now.lookNow");
  }

  private String pace(Point point) {
    return paceAlone(point) + (isStuck() ? "\n" + speech.say("now.stuck") : "");
  }

  /** Whether the jar hardly moved when most such doughs were well on their way. */
  private boolean isStuck() {
    return lastRise()
        .filter(last -> percent(last) < STUCK_PERCENT)
        .filter(last -> dough.first().passes(QUARTER).probabilityBy(last.hours()) >= MOST)
        .isPresent();
  }

  private String paceAlone(Point point) {
    if (isUnread()) {
      return speech.say("now.unread");
    }
    OptionalDouble ahead = point.aheadHours();
    if (ahead.isEmpty()) {
      return speech.say("now.tooEarly");
    }
    double hours = ahead.getAsDouble();
    String by = Words.duration(Math.abs(hours));
    return Math.abs(hours) < ON_TIME_HOURS
        ? speech.say("now.onTime")
        : speech.say(
            hours > 0 ? "now.ahead" : "now.behind",
            Map.of("hours", by, "time", moments.of(point.first().likely())));
  }

  private boolean isUnread() {
    return file.bake().readings().isEmpty();
  }

  /**
   * Where she asked what to do when she is away, that comes first; then what holds if she stays.
   */
  private String bestWay() {
    return ways.filter(each -> !each.late())
        .map(each -> sections(each).headline() + "\n" + speech.say("now.stay") + " ")
        .orElse("");
  }

  private LeaveSections sections(WaysOut found) {
    return LeaveSections.among(found.options(), timeline);
  }

  private void waysOut(Section.Builder body) {
    ways.ifPresent(
        found -> {
          Map<String, String> away =
              Map.of(
                  "from",
                  moments.of(found.absence().leaveHours()),
                  "to",
                  moments.of(found.absence().backHours()));
          body.section("", "").say(speech.say(found.late() ? "now.late" : "now.away", away));
          sections(found).add(body);
        });
  }

  private void doubts(Section.Builder body) {
    Listing.Builder rows = body.listing("doubts", "");
    for (DoughInHand.Doubted each : dough.doubted()) {
      Advice advice = Advice.of(speech.words(), each.doubt());
      String why = Speech.plain(advice.text());
      String remedy = Speech.plain(advice.remedy());
      double percent = percent(each.reading());
      rows.row()
          .moment("hours", "", OptionalDouble.of(each.reading().hours()))
          .number("risePercent", "", percent, Unit.PERCENT)
          .word("doubt", "", each.doubt(), "")
          .word("text", "", why)
          .word("remedy", "", remedy);
      Map<String, String> values =
          Map.of(
              "rise", LoafSections.whole(percent),
              "time", moments.of(each.reading().hours()),
              "why", why,
              "remedy", capital(remedy));
      body.paragraph().say("! " + speech.say("now.doubt", values), 2);
    }
  }

  private Listing rises(List<Point> ahead) {
    Listing.Builder rises = new Listing.Builder("rises", "", timeline);
    for (Point each : ahead) {
      double percent = each.rise().orElseThrow().percent();
      rises
          .row()
          .number("risePercent", "", percent, Unit.PERCENT)
          .window(
              Section.HERE,
              speech.say("now.row", Map.of("rise", speech.percent(percent))),
              each.now())
          .window("expected", isUnread() ? "" : "  " + speech.say("now.atFirst"), each.first())
          .number("aheadHours", "", each.aheadHours(), Unit.HOURS)
          .number("nextLookHours", "", each.nextLookHours(), Unit.HOURS);
    }
    return rises.build();
  }

  /** For other programs: one window a row. */
  private Listing table(List<Point> ahead) {
    Listing.Builder rises = new Listing.Builder("rises", "", timeline);
    for (Point each : ahead) {
      rises
          .row()
          .number("risePercent", "", each.rise().orElseThrow().percent(), Unit.PERCENT)
          .window(Section.HERE, "", each.now())
          .moment("first", "", each.first().likely())
          .number("aheadHours", "", each.aheadHours(), Unit.HOURS)
          .number("nextLookHours", "", each.nextLookHours(), Unit.HOURS);
    }
    return rises.build();
  }

  private void legend(List<Point> ahead, Section.Builder body) {
    if (!ahead.isEmpty() && !isUnread()) {
      body.paragraph().say(speech.say("now.legend"));
    }
  }

  private List<Warning> warnings() {
    List<Warning> all = new ArrayList<>(forecast.warnings());
    loaf.map(each -> each.shape().warnings()).orElse(List.of()).stream()
        .filter(each -> !all.contains(each))
        .forEach(all::add);
    return all;
  }

  private void understood(Section.Builder to) {
    Bake bake = file.bake();
    to.say(speech.say("now.dough"), formula(bake.formula()));
    if (!file.document().assumed().isEmpty()) {
      to.say(speech.say("now.assumed"), assumed());
    }
    timeline.clock().ifPresent(clock -> to.say(speech.say("now.mixed"), clock.startInWords()));
    planned.ifPresent(
        plan -> to.word("loaf", speech.say("now.loaf"), ProofOptions.words(plan, speech)));
    to.say(speech.say("now.readings"), readings());
    to.say(
        speech.say("now.starter"),
        dough.starter().map(this::described).orElseGet(() -> speech.say("now.notLearned")));
    members(to);
  }

  private String formula(DoughFormula formula) {
    return speech.say(
        "now.formula",
        Map.of(
            "flour", flour(formula.flour()),
            "starter", speech.percent(100 * formula.starterOfAddedFlour()),
            "hydration", speech.percent(formula.hydration().percent()),
            "salt", speech.percent(formula.salt().percent())));
  }

  /** In English as it is typed. */
  private String flour(Flour flour) {
    return speech.equals(Speech.ENGLISH)
        ? flour.name()
        : new FormulaWords(speech.words()).flour(flour);
  }

  /** What the head of the file does not say. */
  private String assumed() {
    return file.document().assumed().stream()
        .map(key -> speech.say("now.assumed." + key))
        .collect(Collectors.joining(", "));
  }

  private void members(Section.Builder to) {
    double carry = dough.forecast().isPossible() ? dough.live().membersThatCarry() : 0;
    to.number("membersThatCarry", "", carry, Unit.COUNT)
        .flag("refitted", "", dough.live().isRefitted());
    if (dough.live().isRefitted()) {
      to.say(speech.say("now.fit"), speech.say("now.fewAlike"));
    }
  }

  private String readings() {
    String count = speech.counted("now.reading", file.given()) + leftOut();
    return lastRise()
        .map(
            reading ->
                speech.joined(
                    List.of(
                        count,
                        lastRise(reading)
                            + timeline
                                .clock()
                                .map(clock -> ", " + clock.at(reading.hours()))
                                .orElse(""))))
        .orElse(count);
  }

  private String leftOut() {
    return file.leftOut() == 0 ? "" : ", " + speech.counted("now.leftOut", file.leftOut());
  }

  private String lastRise(Reading reading) {
    return speech.say(
        "now.lastRise",
        Map.of(
            "rise", speech.percent(reading.rise().orElseThrow().percent()),
            "hours", Words.duration(reading.hours())));
  }

  private String described(LearnedStarter starter) {
    return speech.say(
        "now.learned",
        Map.of(
            "bakes", speech.counted("now.bake", starter.bakes()),
            "readings", speech.counted("now.reading", starter.readings())));
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
