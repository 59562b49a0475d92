package doughtide.cli.command.again;

import doughtide.cli.args.ClockTimes;
import doughtide.cli.file.FileNames;
import doughtide.cli.file.FileProblem;
import doughtide.cli.file.JsonTree;
import doughtide.cli.session.Environment;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayStep;
import doughtide.core.day.ProofKind;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Hours;
import doughtide.core.quantity.InputException;
import doughtide.core.rise.DoughTemperature;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.words.Language;
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
import java.util.stream.IntStream;

/**
 * A plan that bake-day or class-day wrote as JSON.
 *
 * @param options all its doughs were planned from, as typed
 * @param planId its name in calendars
 * @param replanned how often it was planned again
 * @param hands how many persons work
 * @param doughs in their order
 * @param steps as written, ascending
 * @param students of a class, in the order of its roster
 */
public record PlanFile(
    Map<String, String> options,
    String planId,
    int replanned,
    int hands,
    List<Dough> doughs,
    List<Written> steps,
    List<ClassDayPages.Student> students) {

  /**
   * A dough of the plan.
   *
   * @param name what it is called
   * @param options that are its own, as typed
   * @param loaves how many were planned
   * @param starterPercent starter in per cent of the flour added
   * @param doughCelsius dough temperature after mixing, °C
   * @param proof where the loaves wait
   * @param proofHours how long, hours
   * @param feed how its starter was fed; empty where none was
   */
  public record Dough(
      String name,
      Map<String, String> options,
      int loaves,
      double starterPercent,
      double doughCelsius,
      ProofKind proof,
      double proofHours,
      Optional<FeedRatio> feed) {

    /** Refuses numbers that no plan has. */
    public Dough {
      Checks.inRange("loaves", loaves, 1, 500, "");
      Checks.inRange("starter", starterPercent, 0.1, 500, "%");
      Checks.inRange(
          "dough temperature",
          doughCelsius,
          DoughTemperature.LOWEST_CELSIUS,
          DoughTemperature.HIGHEST_CELSIUS,
          "°C");
      Checks.inRange("length of the proof", proofHours, 0, 168, "h");
    }

    private Dough with(Map<String, String> own) {
      return new Dough(name, own, loaves, starterPercent, doughCelsius, proof, proofHours, feed);
    }

    private static Dough of(JsonTree dough, Map<String, String> options) {
      return new Dough(
          dough.at("name").text(),
          options,
          (int) dough.at("loaves").number(),
          dough.at("starterOfAddedFlourPercent").number(),
          dough.at("doughCelsius").number(),
          ProofKind.valueOf(dough.at("proof").text().toUpperCase(Locale.ROOT)),
          dough.at("proofHours").number(),
          dough.has("feed") ? Optional.of(ratio(dough.at("feed").at("ratio"))) : Optional.empty());
    }
  }

  /**
   * A step as written.
   *
   * @param kind what is done
   * @param number of the fold or batch
   * @param doughs for which it is done, by number
   * @param person who does it; -1 where nobody is needed
   * @param from when it begins
   * @param to when it is over
   * @param done whether it was done then
   */
  record Written(
      BakeStep.Kind kind,
      int number,
      List<Integer> doughs,
      int person,
      OffsetDateTime from,
      OffsetDateTime to,
      boolean done) {}

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
              + " is no plan of a day: write one with doughtide bake-day … --format json >"
              + " plan.json, or with class-day");
    }
  }

  /**
   * The same with options of one dough that are its own, and students.
   *
   * @param dough its number
   */
  public PlanFile with(
      int dough, Map<String, String> own, List<ClassDayPages.Student> otherStudents) {
    List<Dough> changed = new ArrayList<>(doughs);
    changed.set(dough, doughs.get(dough).with(own));
    return new PlanFile(options, planId, replanned, hands, changed, steps, otherStudents);
  }

  /** The same with other students. */
  public PlanFile with(List<ClassDayPages.Student> otherStudents) {
    return new PlanFile(options, planId, replanned, hands, doughs, steps, otherStudents);
  }

  private static PlanFile of(JsonTree tree) {
    JsonTree plan = tree.at("plans").elements().stream().findFirst().orElseThrow(PlanFile::empty);
    List<Dough> doughs = doughs(tree, plan.at("doughs").elements());
    List<String> names = doughs.stream().map(Dough::name).toList();
    return new PlanFile(
        texts(tree.at("options")),
        tree.at("planId").text(),
        (int) tree.at("replanned").number(),
        (int) tree.at("hands").number(),
        doughs,
        plan.at("steps").elements().stream().map(step -> step(step, names)).toList(),
        tree.has("students")
            ? tree.at("students").elements().stream().map(each -> student(each, names)).toList()
            : List.of());
  }

  private static List<Dough> doughs(JsonTree tree, List<JsonTree> rows) {
    List<JsonTree> own = tree.has("doughOptions") ? tree.at("doughOptions").elements() : List.of();
    if (rows.isEmpty() || !own.isEmpty() && own.size() != rows.size()) {
      throw empty();
    }
    return IntStream.range(0, rows.size())
        .mapToObj(i -> Dough.of(rows.get(i), own.isEmpty() ? Map.of() : texts(own.get(i))))
        .toList();
  }

  private static Map<String, String> texts(JsonTree tree) {
    Map<String, String> texts = new LinkedHashMap<>();
    tree.names().forEach(name -> texts.put(name, tree.at(name).text()));
    return texts;
  }

  private static int number(String name, List<String> names) {
    int number = names.indexOf(name);
    if (number < 0) {
      throw new IllegalArgumentException("a dough that is not in the plan");
    }
    return number;
  }

  private static ClassDayPages.Student student(JsonTree tree, List<String> names) {
    return new ClassDayPages.Student(
        tree.at("name").text(),
        number(tree.at("dough").text(), names),
        (int) tree.at("loaves").number(),
        Optional.of(Language.of(tree.at("language").text())));
  }

  private static FeedRatio ratio(JsonTree tree) {
    return new FeedRatio(
        tree.at("starter").number(), tree.at("flour").number(), tree.at("water").number());
  }

  private static Written step(JsonTree tree, List<String> names) {
    String kind = tree.at("kind").text().replace(' ', '_').toUpperCase(Locale.ROOT);
    return new Written(
        BakeStep.Kind.valueOf(kind),
        (int) tree.at("number").number(),
        tree.at("doughs").elements().stream().map(each -> number(each.text(), names)).toList(),
        tree.at("person").text().isEmpty() ? -1 : tree.at("person").text().charAt(0) - 'A',
        OffsetDateTime.parse(tree.at("from").text()),
        OffsetDateTime.parse(tree.at("to").text()),
        tree.has("done") && tree.at("done").truth());
  }

  private static IllegalArgumentException empty() {
    return new IllegalArgumentException("no plan of a day");
  }

  /** The doughs and the persons. */
  public DayNames names() {
    return new DayNames(doughs.stream().map(Dough::name).toList(), hands);
  }

  /** The steps on an axis of hours. */
  public List<PlanStep> steps(ClockTimes times) {
    return steps.stream()
        .map(
            each ->
                new PlanStep(
                    new DayStep(
                        new BakeStep(
                            each.kind(),
                            hour(times, each.from()),
                            hour(times, each.to()),
                            each.number()),
                        each.doughs(),
                        each.person()),
                    each.done()))
        .toList();
  }

  private static double hour(ClockTimes times, OffsetDateTime moment) {
    return Hours.between(times.start(), moment.atZoneSameInstant(times.start().getZone()));
  }
}
