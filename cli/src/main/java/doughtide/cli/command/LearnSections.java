package doughtide.cli.command;

import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Listing;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.answer.Unit;
import doughtide.cli.answer.Value;
import doughtide.cli.args.Words;
import doughtide.cli.file.ReadingsFile;
import doughtide.core.learning.Bake;
import doughtide.core.learning.Learned;
import doughtide.core.learning.LearnedParameter;
import doughtide.core.learning.Outlier;
import doughtide.core.learning.TargetBelief;
import doughtide.core.loaf.Cold;
import doughtide.core.quantity.Quantities;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Advice;
import doughtide.report.words.LearnedWords;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** What was learned, as an answer. */
final class LearnSections {

  private static final int VERSION = 2;
  private static final Timeline TIMELINE = Timeline.sinceMixing(Optional.empty());

  private final Learned learned;
  private final List<ReadingsFile> files;
  private final Learned.Narrowing windows;
  private final Rise rise;
  private final Optional<Cold> cold;
  private final List<TargetBelief.Loaf> loaves;
  private final Section.Builder body = Section.loose(TIMELINE);

  private LearnSections(
      Learned learned,
      List<ReadingsFile> files,
      Learned.Narrowing windows,
      Rise rise,
      Optional<Cold> cold,
      List<TargetBelief.Loaf> loaves) {
    this.cold = cold;
    this.loaves = loaves;
    this.learned = learned;
    this.files = files;
    this.windows = windows;
    this.rise = rise;
  }

  /**
   * The answer.
   *
   * @param files the bakes read
   * @param windows the hours to a rise for a dough like the last bake
   * @param rise that rise
   * @param cold what is known of the cold, if a probe was read
   * @param loaves how the loaves came out
   */
  public static Answer of(
      Learned learned,
      List<ReadingsFile> files,
      Learned.Narrowing windows,
      Rise rise,
      Optional<Cold> cold,
      List<TargetBelief.Loaf> loaves) {
    LearnSections sections = new LearnSections(learned, files, windows, rise, cold, loaves);
    sections.narrowing();
    sections.target();
    sections.cold.ifPresent(sections::cold);
    sections.outliers();
    sections.parameters();
    sections.bakes();
    return Answer.of("learn", VERSION, sections.headline(), sections.body);
  }

  private String headline() {
    OptionalDouble share = windows.share();
    return "Learned from "
        + Words.counted(learned.bakes(), "bake")
        + " and "
        + Words.counted(learned.readings(), "reading")
        + ". "
        + (share.isPresent()
            ? "The window of a dough like the last is "
                + Unit.SHARE.text(Math.abs(share.getAsDouble()))
                + (share.getAsDouble() >= 0 ? " narrower." : " wider.")
            : "");
  }

  private void narrowing() {
    Bake last = files.get(files.size() - 1).bake();
    body.section(
            "likeTheLastBake",
            "Hours to "
                + Words.percent(rise.percent())
                + " rise, for a dough like '"
                + last.name()
                + "'")
        .number("risePercent", "", rise.percent(), Unit.PERCENT)
        .window("before", "before", windows.before())
        .window("after", "learned", windows.after())
        .number("narrowerShare", "", windows.share(), Unit.SHARE);
  }

  /** What the loaves say of the rise wanted at the oven; the last bake's target is moved. */
  private void target() {
    if (loaves.isEmpty()) {
      return;
    }
    ReadingsFile last = files.get(files.size() - 1);
    Rise used =
        Optional.ofNullable(last.document().head().plan().get("target"))
            .map(text -> Quantities.rise("target:", text))
            .orElseGet(() -> last.bake().formula().flour().targetRise());
    TargetBelief belief = TargetBelief.of(loaves);
    Rise hers = belief.of(used);
    body.section("target", "Your target")
        .number("loaves", "", belief.loaves(), Unit.COUNT)
        .number("loavesWhoseShapingIsKnown", "", shapedLoaves(), Unit.COUNT)
        .number("usedPercent", "", used.percent(), Unit.PERCENT)
        .number("targetPercent", "", hers.percent(), Unit.PERCENT)
        .say(
            Words.counted(loaves.size(), "loaf result")
                + " of yours"
                + asShaped()
                + ": a rise at the oven of "
                + Words.rounded(hers.percent(), 0)
                + " % instead of "
                + Words.rounded(used.percent(), 0)
                + " %. To keep it: doughtide kitchen set target "
                + Words.rounded(hers.percent(), 0)
                + "%");
  }

  /** Who shaped at another hour than the target asks for is not told a new target for that. */
  private String asShaped() {
    long known = shapedLoaves();
    if (known == 0) {
      return "";
    }
    String which = known == loaves.size() ? ", " : ", " + known + " of them ";
    return which + "weighed by the hour at which you shaped";
  }

  private long shapedLoaves() {
    return files.stream()
        .map(file -> file.document().head())
        .filter(head -> head.result().isPresent() && head.shapedHours().isPresent())
        .count();
  }

  private void cold(Cold known) {
    body.section("cold", "Your cold")
        .number("airOffsetKelvin", "", known.offsetCelsius(), Unit.KELVIN)
        .number("airDeviationKelvin", "", known.deviationCelsius(), Unit.KELVIN)
        .number("filmFactor", "", Math.exp(known.filmLogFactor()), Unit.NONE)
        .say(
            "its air is likely "
                + Words.rounded(Math.abs(known.offsetCelsius()), 1)
                + " °C "
                + (known.offsetCelsius() < 0 ? "colder" : "warmer")
                + " than stated, ± "
                + Words.rounded(known.deviationCelsius(), 1)
                + " °C; it cools a loaf "
                + Words.rounded(Math.exp(known.filmLogFactor()), 2)
                + " times as fast as usual, ± "
                + Words.rounded(100 * known.filmLogDeviation(), 0)
                + " %");
  }

  private void outliers() {
    Listing.Builder outliers = body.listing("misfits", "");
    learned.outliers().forEach(outlier -> data(outliers.row(), outlier));
    if (learned.bakes() > 1 && learned.outliers().isEmpty()) {
      body.paragraph().say("All bakes fit each other.");
    }
    learned.outliers().forEach(outlier -> page(body.paragraph(), outlier));
  }

  private static void data(Section.Builder row, Outlier outlier) {
    row.word("bake", "", outlier.bake()).word("reason", "", outlier.reason(), "");
    switch (outlier.reason()) {
      case TEMPERATURE_OFF -> row.number("doughWarmerKelvin", "", outlier.amount(), Unit.KELVIN);
      case STARTER_PAST_RIPE, STARTER_LIVELIER ->
          row.number("vigourPercentOfUsual", "", outlier.amount(), Unit.PERCENT);
      case START_HEIGHT_WRONG ->
          row.number("heightsTooHighPercent", "", outlier.amount(), Unit.PERCENT);
      case UNEXPLAINED -> row.number("amount", "", OptionalDouble.empty(), Unit.NONE);
    }
    Advice advice = Advice.english(outlier.reason());
    row.word("text", "", advice.text())
        .word("remedy", "", advice.remedy())
        .texts("alsoPossible", "", outlier.alsoPossible().stream().map(Section::name).toList());
  }

  private static void page(Section.Builder to, Outlier outlier) {
    Advice advice = Advice.english(outlier.reason());
    to.say("Does not fit the others: " + outlier.bake(), 2)
        .say("  likeliest reason: " + advice.text() + amount(outlier), 4);
    if (!outlier.alsoPossible().isEmpty()) {
      String others =
          outlier.alsoPossible().stream()
              .map(reason -> Advice.english(reason).text())
              .collect(Collectors.joining("; "));
      to.say("  nearly as likely: " + others, 4);
    }
    to.say("  what helps: " + advice.remedy(), 4);
  }

  private static String amount(Outlier outlier) {
    String size = Words.rounded(Math.abs(outlier.amount()), 0);
    boolean more = outlier.amount() > 0;
    return switch (outlier.reason()) {
      case TEMPERATURE_OFF ->
          " (it was about " + size + " °C " + (more ? "warmer" : "colder") + " than noted)";
      case STARTER_PAST_RIPE, STARTER_LIVELIER -> " (about " + size + " % of its usual vigour)";
      case START_HEIGHT_WRONG ->
          " (heights read about " + size + " % " + (more ? "too high" : "too low") + ")";
      case UNEXPLAINED -> "";
    };
  }

  private void parameters() {
    Listing.Builder rows =
        body.listing(
            "parameters", "What is believed: eight in ten of your next doughs lie in the range");
    Section.Builder words = body.section("", "In words");
    for (LearnedParameter each : learned.parameters()) {
      LearnedWords named = LearnedWords.english(each);
      Section.Builder row = rows.row();
      row.word("name", "", named.name())
          .word("unit", "", named.unit())
          .say("parameter", named.name() + ", " + named.unit());
      range(row.section("before", ""), each.before());
      range(row.section("after", ""), each.after());
      row.say("before", words(each.before()))
          .say("after", words(each.after()))
          .word("meaning", "", named.meaning());
      words.say(named.name(), named.meaning());
    }
  }

  private static void range(Section.Builder to, LearnedParameter.Range range) {
    to.quantity(
        Section.HERE,
        "",
        new Value.Range(
            OptionalDouble.of(range.low()),
            OptionalDouble.of(range.middle()),
            OptionalDouble.of(range.high()),
            Unit.NONE));
  }

  private static String words(LearnedParameter.Range range) {
    int decimals = range.high() - range.low() < 0.1 ? 3 : 2;
    return fixed(range.middle(), decimals)
        + " ("
        + fixed(range.low(), decimals)
        + " to "
        + fixed(range.high(), decimals)
        + ")";
  }

  /** With all decimals, so that the column is even; no minus before 0. */
  private static String fixed(double value, int decimals) {
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    return text.matches("-0\\.0+") ? text.substring(1) : text;
  }

  private void bakes() {
    Listing.Builder bakes = body.listing("bakes", "");
    Section.Builder page = body.section("", "Read");
    for (ReadingsFile file : files) {
      bakes
          .row()
          .word("bake", "", file.bake().name())
          .number("readings", "", file.given(), Unit.COUNT)
          .number("linesLeftOut", "", file.leftOut(), Unit.COUNT);
      page.say("  " + described(file), 4);
    }
  }

  private static String described(ReadingsFile file) {
    Bake bake = file.bake();
    String thinned =
        bake.readings().size() < file.given()
            ? " (as " + bake.readings().size() + " means over a quarter of an hour)"
            : "";
    return bake.name()
        + ": "
        + Words.counted(file.given(), "reading")
        + thinned
        + file.leftOutWords()
        + file.assumed().map(words -> "; assumed: " + words).orElse("");
  }
}
