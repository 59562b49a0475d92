package doughtide.report.handout;

import doughtide.core.Internal;
import doughtide.core.dough.DoughFormula;
import doughtide.core.dough.Flour;
import doughtide.core.dough.Starter;
import doughtide.core.dough.StarterShare;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.feeding.Feeding;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.loaf.Proof;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.report.words.Refusal;
import doughtide.report.words.Words;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;

/**
 * Computes pages from doughs: what the model says, in the words of a language. Immutable; the same
 * dough gives the same page.
 *
 * <pre>{@code
 * Words words = Words.in(Language.ENGLISH);
 * byte[] pdf = Handouts.in(words)
 *     .hoursTable(DoughFormula.builder().build(), temperatures, shares, Rise.ofPercent(50))
 *     .bytes(PageFormat.a4(), words, date);
 * }</pre>
 */
public final class Handouts {

  private final Words words;
  private final RiseForecaster forecaster;
  private final Optional<String> title;

  private Handouts(Words words, RiseForecaster forecaster, Optional<String> title) {
    this.words = words;
    this.forecaster = forecaster;
    this.title = title;
  }

  /**
   * In the words of a language, for a baker nobody knows.
   *
   * @param words of one language
   * @return pages in the words of a language, for a baker nobody knows
   */
  public static Handouts in(Words words) {
    return new Handouts(words, RiseForecaster.standard().keepingCurves(), Optional.empty());
  }

  /**
   * {@return the same with another forecaster, for example one that has learned}
   *
   * @param newForecaster belief, parameters and number of members
   */
  public Handouts with(RiseForecaster newForecaster) {
    return new Handouts(words, newForecaster, title);
  }

  /**
   * {@return the same under a title of one's own}
   *
   * @param newTitle printed as it is
   */
  public Handouts titled(String newTitle) {
    return new Handouts(words, forecaster, Optional.of(newTitle));
  }

  /**
   * {@return one dough with the steps of its day}
   *
   * @param dough what is in it and how warm it is
   * @param mixedAt when it is mixed; adds clock times
   * @param proof what happens after bulk fermentation; adds when to shape
   * @throws doughtide.core.quantity.InputException if no hours can be given for the dough
   */
  public BakeSheet bakeSheet(
      HandoutDough dough, Optional<ZonedDateTime> mixedAt, Optional<Proof> proof) {
    return new BakeSheetContent(words, dough, forecast(dough)).sheet(title, mixedAt, proof);
  }

  /**
   * {@return doughs that differ in one thing}
   *
   * @param comparison the doughs and what they differ in
   * @param mark the rise whose hours are compared
   * @throws doughtide.core.quantity.InputException if no hours can be given for one of the doughs
   * @hidden
   */
  @Internal
  public ComparisonPage comparison(Comparison comparison, Rise mark) {
    return new ComparisonContent(words, forecaster, comparison, mark).page(title);
  }

  /**
   * {@return hours to a rise by dough temperature and starter share}
   *
   * @param formula the dough; its own starter share is not used
   * @param temperatures one to ten, the rows
   * @param shares one to six, the columns
   * @param rise over the volume after mixing
   * @throws doughtide.core.quantity.InputException for more rows or columns
   */
  public Handout hoursTable(
      DoughFormula formula, List<Temperature> temperatures, List<StarterShare> shares, Rise rise) {
    return new HoursContent(words, forecaster).table(title, formula, temperatures, shares, rise);
  }

  /**
   * At which rise and hour to shape before a night in the cold, for the same doughs as {@link
   * #hoursTable}, from the same model as {@link #bakeSheet}.
   *
   * @param formula the dough; its own starter share is not used
   * @param temperatures one to ten, the rows
   * @param shares one to six, the columns
   * @param proof what happens after bulk fermentation
   * @return the table
   * @throws doughtide.core.quantity.InputException for more rows or columns
   */
  public Handout nightTable(
      DoughFormula formula,
      List<Temperature> temperatures,
      List<StarterShare> shares,
      Proof proof) {
    return new HoursContent(words, forecaster).night(formula, temperatures, shares, proof);
  }

  /**
   * {@return both tables for the wall, each dough forecast once: {@link #hoursTable}, then {@link
   * #nightTable}}
   *
   * @param formula the dough; its own starter share is not used
   * @param temperatures one to ten, the rows
   * @param shares one to six, the columns
   * @param rise over the volume after mixing
   * @param proof what happens after bulk fermentation
   * @throws doughtide.core.quantity.InputException for more rows or columns
   */
  public List<Handout> wall(
      DoughFormula formula,
      List<Temperature> temperatures,
      List<StarterShare> shares,
      Rise rise,
      Proof proof) {
    HoursContent content = new HoursContent(words, forecaster);
    return List.of(
        content.table(title, formula, temperatures, shares, rise),
        content.night(formula, temperatures, shares, proof));
  }

  /**
   * {@return what happens unseen through one bulk fermentation}
   *
   * @param dough what is in it and how warm it is
   * @param mark the rise at which the page counts where the gas is
   * @throws doughtide.core.quantity.InputException if no hours can be given for the dough
   */
  public Handout whyItRises(HandoutDough dough, Rise mark) {
    return new WhyContent(words, dough, forecast(dough)).page(mark);
  }

  /**
   * {@return when a starter is ripe, by temperature and feed}
   *
   * @param feeding starter and flour; its own ratio is not used
   * @param temperatures one to ten, the rows
   * @param ratios one to six, the columns
   * @throws doughtide.core.quantity.InputException for more rows or columns
   * @hidden
   */
  @Internal
  public Handout starterPage(
      Feeding feeding, List<Temperature> temperatures, List<FeedRatio> ratios) {
    return new StarterContent(words, forecaster).page(title, feeding, temperatures, ratios);
  }

  /**
   * {@return a worksheet for one evening that makes the windows a baker's own: jars fed side by
   * side, see {@link doughtide.core.learning.FirstEvening}}
   *
   * @param starter ripe
   * @param flour given to it
   * @param temperature of the two jars side by side
   * @param fedAt when they are fed; adds clock times
   * @throws doughtide.core.quantity.InputException if no hours can be given at the temperature
   */
  public Handout firstEvening(
      Starter starter, Flour flour, Temperature temperature, Optional<ZonedDateTime> fedAt) {
    return new FirstEveningContent(words, forecaster)
        .form(title, starter, flour, temperature, fedAt);
  }

  /**
   * {@return a strip to cut out and tape to a sample jar}
   *
   * @param dough what is in it and how warm it is
   * @param mixedAt when the dough is mixed; adds clock times
   * @param proof what happens after bulk fermentation; without it bulk ends at the rise
   * @param rise at which bulk ends where there is no proof
   * @param startMm height of the dough in the jar right after mixing, 20…200 mm
   * @throws doughtide.core.quantity.InputException if there is no hour to shape, or no rise
   */
  public Handout jarStrip(
      HandoutDough dough,
      Optional<ZonedDateTime> mixedAt,
      Optional<Proof> proof,
      Rise rise,
      double startMm) {
    JarStripContent content = new JarStripContent(words, dough, forecast(dough), mixedAt, startMm);
    return proof
        .map(each -> content.forLoaf(title, each))
        .orElseGet(() -> content.forRise(title, rise));
  }

  /**
   * {@return squared paper with the expected rise, on which readings are plotted by hand and which
   * says when to shape without a computer}
   *
   * @param dough what is in it and how warm it is
   * @param mixedAt when the dough is mixed; adds clock times
   * @param proof what happens after bulk fermentation; without it bulk ends at the rise
   * @param rise at which bulk ends where there is no proof
   * @throws doughtide.core.quantity.InputException if there is no hour to shape, or no rise
   */
  public Handout handSheet(
      HandoutDough dough, Optional<ZonedDateTime> mixedAt, Optional<Proof> proof, Rise rise) {
    return new HandSheetContent(words, dough, forecast(dough), mixedAt).sheet(title, proof, rise);
  }

  private RiseForecast forecast(HandoutDough dough) {
    return Refusal.ifImpossible(forecaster.forecast(dough.formula(), dough.doughTemperature()));
  }
}
