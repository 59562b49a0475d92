package doughtide.cli.command.again;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.FileNames;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.JsonTree;
import doughtide.cli.session.Environment;
import doughtide.core.day.BakeStep;
import doughtide.core.day.ProofKind;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A plan that bake-day wrote as JSON.
 *
 * @param options it was planned from, as typed
 * @param planId its name in calendars
 * @param replanned how often it was planned again
 * @param starterPercent starter in per cent of the flour added
 * @param doughCelsius dough temperature after mixing, °C
 * @param proof where the loaves wait
 * @param proofHours how long, hours
 * @param feed how its starter was fed; empty where none was
 * @param steps as written, ascending
 */
public record PlanFile(
    Map<String, String> options,
    String planId,
    int replanned,
    double starterPercent,
    double doughCelsius,
    ProofKind proof,
    double proofHours,
    Optional<FeedRatio> feed,
    List<Written> steps) {

  /**
   * A step as written.
   *
   * @param kind what is done
   * @param number of the fold or batch
   * @param from when it begins
   * @param to when it is over
   * @param done whether it was done then
   */
  record Written(
      BakeStep.Kind kind, int number, OffsetDateTime from, OffsetDateTime to, boolean done) {}

  /** Reads a file. */
  public static PlanFile read(String option, String name, Environment environment) {
    try (InputStream in =
        new BufferedInputStream(Files.newInputStream(FileNames.path(option, name, environment)))) {
      return of(JsonTree.read(name, in));
    } catch (IOException e) {
      throw FileProblem.of(name, e);
    } catch (DateTimeException | IllegalArgumentException e) {
      throw new InputException(
          FileProblem.quoted(name)
              + " is no plan of one dough: write one with doughtide bake-day … --format json >"
              + " plan.json");
    }
  }

  private static PlanFile of(JsonTree tree) {
    Map<String, String> options = new LinkedHashMap<>();
    JsonTree typed = tree.at("options");
    typed.names().forEach(option -> options.put(option, typed.at(option).text()));
    JsonTree plan = tree.at("plans").elements().stream().findFirst().orElseThrow(PlanFile::empty);
    List<JsonTree> doughs = plan.at("doughs").elements();
    if (doughs.size() != 1) {
      throw empty();
    }
    JsonTree dough = doughs.get(0);
    List<Written> steps = new ArrayList<>();
    plan.at("steps").elements().forEach(step -> steps.add(step(step)));
    return new PlanFile(
        options,
        tree.at("planId").text(),
        (int) tree.at("replanned").number(),
        dough.at("starterOfAddedFlourPercent").number(),
        dough.at("doughCelsius").number(),
        ProofKind.valueOf(dough.at("proof").text().toUpperCase(Locale.ROOT)),
        dough.at("proofHours").number(),
        dough.has("feed") ? Optional.of(ratio(dough.at("feed").at("ratio"))) : Optional.empty(),
        steps);
  }

  private static FeedRatio ratio(JsonTree tree) {
    return new FeedRatio(
        tree.at("starter").number(), tree.at("flour").number(), tree.at("water").number());
  }

  private static Written step(JsonTree tree) {
    String kind = tree.at("kind").text().replace(' ', '_').toUpperCase(Locale.ROOT);
    return new Written(
        BakeStep.Kind.valueOf(kind),
        (int) tree.at("number").number(),
        OffsetDateTime.parse(tree.at("from").text()),
        OffsetDateTime.parse(tree.at("to").text()),
        tree.has("done") && tree.at("done").truth());
  }

  private static IllegalArgumentException empty() {
    return new IllegalArgumentException("no plan of one dough");
  }

  /** The options as they are given to a command. */
  public Map<String, List<String>> values() {
    Map<String, List<String>> values = new LinkedHashMap<>();
    options.forEach((option, text) -> values.put(option, List.of(text)));
    return values;
  }

  /** The steps on an axis of hours. */
  public List<PlanStep> steps(ClockTimes times) {
    return steps.stream()
        .map(
            each ->
                new PlanStep(
                    new BakeStep(
                        each.kind(),
                        hour(times, each.from()),
                        hour(times, each.to()),
                        each.number()),
                    each.done()))
        .toList();
  }

  private static double hour(ClockTimes times, OffsetDateTime moment) {
    return Hours.between(times.start(), moment.atZoneSameInstant(times.start().getZone()));
  }
}
