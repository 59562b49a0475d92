package doughtide.cli.file;

import doughtide.cli.answer.JsonWriter;
import doughtide.cli.session.Environment;
import doughtide.core.forecast.Belief;
import doughtide.core.learning.JarError;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.learning.LearningPrior;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A learned starter as a file: versioned JSON that a person can look into. */
public final class StarterFile {

  private static final int DECIMALS = 17;
  private static final long LARGEST_BYTES = 1_000_000;
  private static final Pattern SCHEMA = Pattern.compile("doughtide/starter/([0-9]{1,6})");
  private static final int VERSION = 1;

  private StarterFile() {}

  /** Writes a starter, whole or not at all. */
  public static void write(LearnedStarter starter, OutputFile file) throws IOException {
    file.write(
        out -> {
          Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
          write(starter, new JsonWriter(writer));
          writer.flush();
        });
  }

  private static void write(LearnedStarter starter, JsonWriter json) {
    json.beginObject();
    json.field("schema", LearnedStarter.SCHEMA);
    json.field("program", starter.programVersion());
    json.name("data").beginObject();
    json.field("sha256", starter.dataDigest());
    json.field("bakes", (long) starter.bakes());
    json.field("readings", (long) starter.readings()).endObject();
    json.name("coordinates");
    texts(
        json,
        List.of(
            "ln vigour",
            "ln lag factor",
            "true minus noted temperature, K",
            "ln rate scale",
            "retention shift, gas share",
            "ln starting air over 0.06",
            "ln loss of strength",
            "ln height read over true height"));
    json.name("prior").beginObject();
    numbers(json.name("mean"), starter.prior().mean());
    numbers(json.name("betweenBakers"), starter.prior().bakerDeviation());
    numbers(json.name("betweenBakes"), starter.prior().bakeDeviation()).endObject();
    json.name("posterior").beginArray();
    writePosterior(starter.posterior(), json);
    json.endArray();
    json.name("jar").beginObject();
    json.field("mean", starter.jar().mean(), DECIMALS);
    json.field("deviation", starter.jar().deviation(), DECIMALS).endObject();
    json.name("mixerFrictionCelsius").beginObject();
    starter.mixerFrictionCelsius().forEach((name, kelvin) -> json.field(name, kelvin, DECIMALS));
    json.endObject();
    json.endObject();
  }

  private static void writePosterior(Belief posterior, JsonWriter json) {
    List<RateCurves> curves = RiseParameters.standard().curves();
    double[] weights = posterior.curveWeights(curves);
    for (int k = 0; k < weights.length; k++) {
      Belief part = posterior.under(curves.get(k).key());
      json.beginObject();
      json.field("rateCurve", curves.get(k).key());
      json.field("weight", weights[k], DECIMALS);
      numbers(json.name("mean"), part.mean());
      json.name("covariance").beginArray();
      for (double[] row : part.covariance()) {
        numbers(json, row);
      }
      json.endArray();
      json.endObject();
    }
  }

  private static JsonWriter numbers(JsonWriter json, double[] values) {
    json.beginArray();
    for (double each : values) {
      json.value(each, DECIMALS);
    }
    return json.endArray();
  }

  private static void texts(JsonWriter json, List<String> values) {
    json.beginArray();
    values.forEach(json::value);
    json.endArray();
  }

  /**
   * Reads a starter.
   *
   * @param option the option that named it, for messages
   * @param name as typed
   * @throws InputException if the file is none, is newer than this program, or holds what cannot be
   */
  public static LearnedStarter read(String option, String name, Environment environment) {
    Path path = FileNames.path(option, name, environment);
    try {
      if (Files.isDirectory(path)) {
        throw new InputException(
            FileProblem.quoted(name) + " is a folder: give the name of a file");
      }
      if (Files.size(path) > LARGEST_BYTES) {
        throw new InputException(
            FileProblem.quoted(name) + " is far too large for a starter file: check the name");
      }
      try (InputStream in = Files.newInputStream(path)) {
        return starter(name, JsonTree.read(name, in));
      }
    } catch (IOException e) {
      throw FileProblem.of(name, e);
    }
  }

  private static LearnedStarter starter(String name, JsonTree tree) {
    checkSchema(name, tree);
    try {
      Map<String, Double> friction = new TreeMap<>();
      JsonTree mixers = tree.at("mixerFrictionCelsius");
      mixers.names().forEach(mixer -> friction.put(mixer, mixers.at(mixer).number()));
      return new LearnedStarter(
          tree.at("program").text(),
          tree.at("data").at("sha256").text(),
          (int) tree.at("data").at("bakes").number(),
          (int) tree.at("data").at("readings").number(),
          LearningPrior.of(
              tree.at("prior").at("mean").numbers(),
              tree.at("prior").at("betweenBakers").numbers(),
              tree.at("prior").at("betweenBakes").numbers()),
          posterior(tree.at("posterior").elements()),
          new JarError(tree.at("jar").at("mean").number(), tree.at("jar").at("deviation").number()),
          friction);
    } catch (InputException e) {
      String message = String.valueOf(e.getMessage());
      boolean named = message.startsWith(FileProblem.quoted(name));
      throw named ? e : e.inWords(FileProblem.quoted(name) + ": " + message);
    }
  }

  private static Belief posterior(List<JsonTree> elements) {
    Map<String, Belief> parts = new LinkedHashMap<>();
    Map<String, Double> weights = new LinkedHashMap<>();
    for (JsonTree element : elements) {
      List<JsonTree> rows = element.at("covariance").elements();
      double[][] covariance = rows.stream().map(JsonTree::numbers).toArray(double[][]::new);
      String key = element.at("rateCurve").text();
      weights.put(key, element.at("weight").number());
      parts.put(key, Belief.of(element.at("mean").numbers(), covariance));
    }
    return Belief.byCurve(parts, weights);
  }

  private static void checkSchema(String name, JsonTree tree) {
    Matcher schema = SCHEMA.matcher(tree.has("schema") ? tree.at("schema").text() : "");
    if (!schema.matches()) {
      throw new InputException(
          FileProblem.quoted(name)
              + " is no starter file: make one with doughtide learn FOLDER --save starter.json");
    }
    int version = Integer.parseInt(schema.group(1));
    if (version != VERSION) {
      throw new InputException(
          FileProblem.quoted(name)
              + " was written in form "
              + version
              + ", this program reads form "
              + VERSION
              + ": use a newer doughtide, or learn the starter again");
    }
  }
}
