package doughtide.core.document;

import doughtide.core.document.DocumentReader.Entry;
import doughtide.core.document.DocumentReader.Line;
import doughtide.core.document.DocumentReader.Use;
import doughtide.core.forecast.Belief;
import doughtide.core.forecast.Unknown;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.LearningPrior;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A learned starter as text: what it was learned from, what was believed before, and below a table
 * of what is believed now, one line for each unknown under each pair of rate curves. Unknowns and
 * curves are known by name, so that a text outlives a model that gains or loses one.
 *
 * <pre>{@code
 * String kept = StarterDocument.text(learned.starter("1.0"));
 * StarterDocument read = StarterDocument.read(kept.lines().iterator(), curveKeys);
 * RiseForecaster mine = RiseForecaster.standard().with(read.starter().posterior());
 * }</pre>
 *
 * @param starter what is kept; what the text does not say is as before any reading
 * @param keptPrior unknowns and rate curves that the text does not know: of them the prior holds
 * @param leftOut unknowns and rate curves of the text that are not known here
 */
public record StarterDocument(
    LearnedStarter starter, List<String> keptPrior, List<String> leftOut) {

  private static final int FORM = 2;
  private static final String ANY_CURVE = "any";
  private static final String JAR = "jar";
  private static final int BEFORE_COVARIANCE = 3;
  private static final List<String> UNKNOWNS =
      Arrays.stream(Unknown.values())
          .limit(Belief.SIZE)
          .map(unknown -> unknown.name().toLowerCase(Locale.ROOT))
          .toList();

  /**
   * Copies the lists.
   *
   * @param starter what is kept; what the text does not say is as before any reading
   * @param keptPrior unknowns and rate curves that the text does not know: of them the prior holds
   * @param leftOut unknowns and rate curves of the text that are not known here
   */
  public StarterDocument {
    keptPrior = List.copyOf(keptPrior);
    leftOut = List.copyOf(leftOut);
  }

  /**
   * Reads a starter.
   *
   * @param lines the text, without line endings
   * @param curves keys of the rate curves that are known here
   * @return the starter, and what was read from a file of an earlier version
   * @throws InputException if the text is no starter, is of a newer form, or holds what cannot be
   */
  public static StarterDocument read(Iterator<String> lines, Collection<String> curves) {
    return new TextReader(lines).read(curves);
  }

  /** Reads one text. */
  private static final class TextReader {
    private final DocumentReader reader;
    private final Map<String, double[]> means = new LinkedHashMap<>();
    private final Map<String, double[][]> covariances = new LinkedHashMap<>();
    private List<String> columns = List.of();

    TextReader(Iterator<String> lines) {
      Map<String, Use> keys = new LinkedHashMap<>();
      for (String key : List.of("form", "program", "data", "bakes", "readings", JAR)) {
        keys.put(key, Use.ONCE);
      }
      for (String key : List.of("mixer", "prior", "curve")) {
        keys.put(key, Use.REPEATED);
      }
      keys.put("note", Use.REMARK);
      this.reader = new DocumentReader(lines, keys, Vocabulary.KEYS_ONLY);
    }

    StarterDocument read(Collection<String> known) {
      Optional<Line> heading = reader.head(line -> line.startsWith("curve;unknown;mean;"));
      checkForm();
      columns =
          heading
              .map(line -> cells(line.text()))
              .orElseThrow(
                  () ->
                      new InputException(
                          "starter.no-belief", "there is no table of what is believed"));
      for (Optional<Line> line = reader.next(); line.isPresent(); line = reader.next()) {
        Line row = line.get();
        DocumentReader.at(row.number(), () -> take(cells(row.text())));
      }
      Map<String, Double> weights = weights();
      LearnedStarter starter =
          new LearnedStarter(
              text("program"),
              text("data"),
              (int) number("bakes"),
              (int) number("readings"),
              prior(),
              posterior(weights),
              jar(),
              mixers());
      List<String> ofText = new ArrayList<>(columns.subList(BEFORE_COVARIANCE, columns.size()));
      ofText.addAll(weights.keySet());
      List<String> here = new ArrayList<>(UNKNOWNS);
      if (!weights.isEmpty()) {
        here.addAll(known);
      }
      return new StarterDocument(starter, without(here, ofText), without(ofText, here));
    }

    private static List<String> without(List<String> some, List<String> others) {
      return some.stream().filter(each -> !others.contains(each)).toList();
    }

    private void checkForm() {
      double form = number("form");
      if (form != FORM) {
        throw new InputException(
            "starter.form",
            "it was written in form "
                + (long) form
                + ", this program reads form "
                + FORM
                + ": use a newer doughtide, or learn the starter again");
      }
    }

    private String text(String key) {
      return reader.required(key, key + ": …", text -> text);
    }

    private double number(String key) {
      return reader.required(key, key + ": 2", text -> StarterDocument.number(text));
    }

    private boolean take(List<String> cells) {
      if (cells.size() != columns.size()) {
        throw new InputException(
            "starter.columns", cells.size() + " columns, but the heading names " + columns.size());
      }
      int row = UNKNOWNS.indexOf(cells.get(1));
      String curve = cells.get(0);
      double[] mean = means.computeIfAbsent(curve, each -> Belief.standard().mean());
      double[][] covariance =
          covariances.computeIfAbsent(curve, each -> Belief.standard().covariance());
      for (int i = BEFORE_COVARIANCE; i < columns.size(); i++) {
        double value = StarterDocument.number(cells.get(i));
        int column = UNKNOWNS.indexOf(columns.get(i));
        if (row >= 0 && column >= 0) {
          covariance[row][column] = value;
        }
      }
      if (row >= 0) {
        mean[row] = StarterDocument.number(cells.get(2));
      }
      return true;
    }

    private Map<String, Double> weights() {
      Map<String, Double> weights = new LinkedHashMap<>();
      for (Entry entry : reader.all("curve")) {
        List<String> cells = entry.read(text -> parts(text, 2));
        weights.put(cells.get(0), entry.read(text -> StarterDocument.number(cells.get(1))));
      }
      return weights;
    }

    private Belief posterior(Map<String, Double> weights) {
      Map<String, Belief> parts = new LinkedHashMap<>();
      means.forEach(
          (curve, mean) ->
              parts.put(curve, Belief.of(mean, covariances.getOrDefault(curve, new double[0][]))));
      Belief any = parts.get(ANY_CURVE);
      return any == null ? Belief.byCurve(parts, weights) : any;
    }

    private LearningPrior prior() {
      LearningPrior standard = LearningPrior.standard();
      double[] mean = standard.mean();
      double[] baker = standard.bakerDeviation();
      double[] bake = standard.bakeDeviation();
      for (Entry entry : reader.all("prior")) {
        List<String> cells = entry.read(text -> parts(text, 4));
        boolean jar = cells.get(0).equals(JAR);
        int i = jar ? Belief.SIZE : UNKNOWNS.indexOf(cells.get(0));
        if (i >= 0) {
          mean[i] = entry.read(text -> StarterDocument.number(cells.get(1)));
          baker[i] = entry.read(text -> StarterDocument.number(cells.get(2)));
          bake[i] = entry.read(text -> StarterDocument.number(cells.get(3)));
        }
      }
      return LearningPrior.of(mean, baker, bake);
    }

    private JarError jar() {
      return reader.required(
          JAR,
          "jar: 0; 0.03",
          text -> {
            List<String> cells = parts(text, 2);
            return new JarError(
                StarterDocument.number(cells.get(0)), StarterDocument.number(cells.get(1)));
          });
    }

    private Map<String, Double> mixers() {
      Map<String, Double> mixers = new TreeMap<>();
      for (Entry entry : reader.all("mixer")) {
        List<String> cells = entry.read(text -> parts(text, 2));
        mixers.put(cells.get(0), entry.read(text -> StarterDocument.number(cells.get(1))));
      }
      return mixers;
    }
  }

  private static List<String> cells(String line) {
    return CsvCells.of(line, ';').stream().map(String::strip).toList();
  }

  private static List<String> parts(String text, int wanted) {
    List<String> cells = cells(text);
    if (cells.size() != wanted) {
      throw new InputException(
          "starter.parts",
          cells.size()
              + (cells.size() == 1 ? " part" : " parts")
              + ", there must be "
              + wanted
              + ", separated by semicolons");
    }
    return cells;
  }

  private static double number(String text) {
    String clean = text.strip();
    if (!clean.matches("-?[0-9]{1,20}(\\.[0-9]{1,20})?([eE]-?[0-9]{1,3})?")) {
      throw new InputException("starter.number", "'" + Shorten.to(clean, 40) + "' is not a number");
    }
    return Double.parseDouble(clean);
  }

  /**
   * {@return the starter as text, which {@link #read} reads back without loss}
   *
   * @param starter what was learned
   */
  public static String text(LearnedStarter starter) {
    Belief posterior = starter.posterior();
    DocumentText text =
        new DocumentText("starter")
            .line("form", Integer.toString(FORM))
            .line("program", starter.programVersion())
            .line("data", starter.dataDigest())
            .line("bakes", Integer.toString(starter.bakes()))
            .line("readings", Integer.toString(starter.readings()))
            .line(JAR, starter.jar().mean() + "; " + starter.jar().deviation());
    starter
        .mixerFrictionCelsius()
        .forEach((name, celsius) -> text.line("mixer", cell(name) + "; " + celsius));
    addPrior(starter.prior(), text);
    posterior.curves().forEach(key -> text.line("curve", key + "; " + posterior.weight(key)));
    StringBuilder table =
        new StringBuilder("curve;unknown;mean;").append(String.join(";", UNKNOWNS)).append('\n');
    if (posterior.curves().isEmpty()) {
      addRows(ANY_CURVE, posterior, table);
    }
    posterior.curves().forEach(key -> addRows(key, posterior.under(key), table));
    return text.toString() + table;
  }

  private static void addPrior(LearningPrior prior, DocumentText text) {
    for (int i = 0; i <= Belief.SIZE; i++) {
      text.line(
          "prior",
          (i < Belief.SIZE ? UNKNOWNS.get(i) : JAR)
              + "; "
              + prior.mean()[i]
              + "; "
              + prior.bakerDeviation()[i]
              + "; "
              + prior.bakeDeviation()[i]);
    }
  }

  private static void addRows(String curve, Belief belief, StringBuilder table) {
    double[] mean = belief.mean();
    double[][] covariance = belief.covariance();
    for (int i = 0; i < Belief.SIZE; i++) {
      table.append(curve).append(';').append(UNKNOWNS.get(i)).append(';').append(mean[i]);
      for (double each : covariance[i]) {
        table.append(';').append(each);
      }
      table.append('\n');
    }
  }

  /** A name that holds a separator or a mark is put into marks. */
  private static String cell(String name) {
    boolean plain = name.indexOf(';') < 0 && name.indexOf('"') < 0;
    return plain ? name : '"' + name.replace("\"", "\"\"") + '"';
  }
}
