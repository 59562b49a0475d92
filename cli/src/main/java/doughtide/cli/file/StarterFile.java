package doughtide.cli.file;

import doughtide.cli.session.Environment;
import doughtide.core.document.StarterDocument;
import doughtide.core.learning.LearnedStarter;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.RiseParameters;
import doughtide.core.rise.RiseParameters.RateCurves;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The file of a learned starter. One of the first round, in JSON, is turned into the text of today
 * and read as such.
 */
public final class StarterFile {

  private static final int MOST_LINES = 20_000;
  private static final Pattern FIRST_ROUND = Pattern.compile("doughtide/starter/1");

  /** What the first round called the unknowns, by what they are called now. */
  private static final Map<String, String> UNKNOWNS =
      Map.of(
          "ln vigour", "vigour",
          "ln lag factor", "lag",
          "true minus noted temperature, K", "temperature",
          "ln rate scale", "rate",
          "retention shift, gas share", "retention",
          "ln starting air over 0.06", "air",
          "ln loss of strength", "strength",
          "ln height read over true height", "jar");

  private StarterFile() {}

  /** Writes a starter, whole or not at all. */
  public static void write(LearnedStarter starter, OutputFile file) {
    file.write(StarterDocument.text(starter));
  }

  /**
   * What a file holds.
   *
   * @param starter what is kept
   * @param notice what to know about the file, in one line
   */
  public record Content(LearnedStarter starter, Optional<String> notice) {}

  /** The starter in a file. */
  public static LearnedStarter read(String option, String name, Environment environment) {
    return content(option, name, environment).starter();
  }

  /**
   * Reads a file.
   *
   * @param option the option that named it, for messages
   * @param name as typed
   * @throws InputException if the file is none, is newer than this program, or holds what cannot be
   */
  public static Content content(String option, String name, Environment environment) {
    List<String> curves = new ArrayList<>();
    RiseParameters.standard().curves().forEach(each -> curves.add(each.key()));
    environment.catalogue().curves().stream().map(RateCurves::key).forEach(curves::add);
    List<String> lines = DocumentFile.read(option, name, environment, StarterFile::all);
    boolean json =
        lines.stream().filter(line -> !line.isBlank()).findFirst().orElse("").startsWith("{");
    List<String> text = json ? converted(name, String.join("\n", lines)) : lines;
    StarterDocument document =
        DocumentFile.named(name, () -> StarterDocument.read(text.iterator(), curves));
    List<String> own = environment.catalogue().curves().stream().map(RateCurves::key).toList();
    List<String> missing =
        document.keptPrior().stream().filter(each -> !own.contains(each)).toList();
    return new Content(document.starter(), notice(name, json, missing, document.leftOut()));
  }

  private static List<String> all(Iterator<String> lines) {
    List<String> all = new ArrayList<>();
    while (lines.hasNext()) {
      all.add(lines.next());
      if (all.size() > MOST_LINES) {
        throw new InputException("it is far too large for a starter file: check the name");
      }
    }
    return all;
  }

  private static Optional<String> notice(
      String name, boolean json, List<String> missing, List<String> leftOut) {
    StringBuilder notice = new StringBuilder();
    if (json) {
      notice.append(" was written by the first round of this program; learn it again to renew it");
    }
    if (!missing.isEmpty()) {
      notice.append(notice.isEmpty() ? " " : "; it ").append("says nothing of ");
      notice.append(String.join(", ", missing));
      notice.append(", of which the usual belief holds");
    }
    if (!leftOut.isEmpty()) {
      notice.append(notice.isEmpty() ? " " : "; it ").append("knows ");
      notice.append(String.join(", ", leftOut)).append(", which is left out");
    }
    return notice.isEmpty() ? Optional.empty() : Optional.of(FileProblem.quoted(name) + notice);
  }

  /** A file of the first round as lines of today's text. */
  private static List<String> converted(String name, String json) {
    try {
      JsonTree tree =
          JsonTree.read(name, new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8)));
      checkSchema(name, tree);
      return converted(tree);
    } catch (IOException e) {
      throw FileProblem.of(name, e);
    }
  }

  private static List<String> converted(JsonTree tree) {
    List<String> lines = new ArrayList<>();
    lines.add("form: 2");
    lines.add("program: " + tree.at("program").text());
    lines.add("data: " + tree.at("data").at("sha256").text());
    lines.add("bakes: " + (long) tree.at("data").at("bakes").number());
    lines.add("readings: " + (long) tree.at("data").at("readings").number());
    lines.add(
        "jar: "
            + tree.at("jar").at("mean").number()
            + "; "
            + tree.at("jar").at("deviation").number());
    JsonTree mixers = tree.at("mixerFrictionCelsius");
    for (String mixer : mixers.names()) {
      lines.add("mixer: \"" + mixer.replace("\"", "\"\"") + "\"; " + mixers.at(mixer).number());
    }
    List<String> names = names(tree);
    JsonTree prior = tree.at("prior");
    double[] mean = prior.at("mean").numbers();
    double[] bakers = prior.at("betweenBakers").numbers();
    double[] bakes = prior.at("betweenBakes").numbers();
    for (int i = 0; i < Math.min(names.size(), mean.length); i++) {
      lines.add("prior: " + names.get(i) + "; " + mean[i] + "; " + bakers[i] + "; " + bakes[i]);
    }
    List<JsonTree> parts = tree.at("posterior").elements();
    for (JsonTree part : parts) {
      lines.add("curve: " + curve(part) + "; " + part.at("weight").number());
    }
    List<String> unknowns = names.stream().filter(each -> !each.equals("jar")).toList();
    lines.add("curve;unknown;mean;" + String.join(";", unknowns));
    parts.forEach(part -> addRows(part, unknowns, lines));
    return lines;
  }

  private static void addRows(JsonTree part, List<String> unknowns, List<String> lines) {
    double[] mean = part.at("mean").numbers();
    List<JsonTree> rows = part.at("covariance").elements();
    for (int i = 0; i < Math.min(unknowns.size(), Math.min(mean.length, rows.size())); i++) {
      StringBuilder line = new StringBuilder(curve(part));
      line.append(';').append(unknowns.get(i)).append(';').append(mean[i]);
      for (double each : rows.get(i).numbers()) {
        line.append(';').append(each);
      }
      lines.add(line.toString());
    }
  }

  private static List<String> names(JsonTree tree) {
    return tree.at("coordinates").elements().stream()
        .map(JsonTree::text)
        .map(each -> UNKNOWNS.getOrDefault(each, each))
        .toList();
  }

  /** The first round knew one kind of yeast, and its forms by the names of constants. */
  private static String curve(JsonTree part) {
    String name = part.at("rateCurve").text();
    boolean constant = name.matches("[A-Z_]+");
    return constant
        ? "humilis/" + name.toLowerCase(Locale.ROOT).replace('_', '-')
        : name.replace(' ', '-').replace(";", "");
  }

  private static void checkSchema(String name, JsonTree tree) {
    Matcher schema = FIRST_ROUND.matcher(tree.has("schema") ? tree.at("schema").text() : "");
    if (!schema.matches()) {
      throw new InputException(
          FileProblem.quoted(name)
              + " is no starter file: make one with doughtide learn FOLDER --save starter.txt");
    }
  }
}
