package doughtide.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Good files for every reader of the program, in a folder that is put right after each call. */
final class FuzzSamples {

  /**
   * A way to have a file read.
   *
   * @param file its name
   * @param words the call
   */
  record Reader(String file, List<String> words) {
    private static Reader of(String file, String words) {
      return new Reader(file, List.of(words.split(" ")));
    }

    @Override
    public String toString() {
      return "file: " + String.join(" ", words);
    }
  }

  private static final String CLASS =
      "--ready-at 2027-03-14T12:00 --at-the-bench 07:00-22:00 --cold 4C";

  /** Calls to spoil beside the examples of a command's help. */
  static final Map<String, List<List<String>>> CALLS =
      Map.of(
          "class-day",
          List.of(
              words("staged.csv " + CLASS),
              words("class.csv --roster roster.txt " + CLASS),
              again("plan.json", "2027-03-13T10:40", "--did", "Fenside autolyse 10:35"),
              again("plan.json", "2027-03-13T08:00", "--not-done", "Fenside feed"),
              again("plan.json", "2027-03-13T10:40", "--loaves", "Fenside 3, Harrow white 2")),
          "bake-day",
          List.of(
              again("bake.json", "2027-03-13T07:30", "--did", "feed 07:10"),
              again("bake.json", "2027-03-13T07:30", "--not-done", "feed"),
              again("bake.json", "2027-03-13T18:10", "--did", "mix 17:20")),
          "start",
          List.of(
              words("neu --dough-temp 26C --starter 20% --language de"),
              words("otra --dough-temp 26C --starter 20% --language es")),
          "note",
          List.of(words("dough 44% 24C --language fr"), words("dough shaped --language pt")),
          "now",
          List.of(words("dough --language de"), words("dough --cold 4C --language fr")));

  private static List<String> words(String words) {
    return List.of(words.split(" "));
  }

  private static List<String> again(String plan, String now, String option, String value) {
    return List.of("--again", plan, "--now", now, option, value);
  }

  /** Every kind of file, and every command that reads it in its own way. */
  static final List<Reader> READERS =
      List.of(
          Reader.of("quayside-today.csv", "rise --readings quayside-today.csv"),
          Reader.of("quayside-today.csv", "rise --readings quayside-today.csv --skip-bad-lines"),
          Reader.of("millimetres.csv", "rise --readings millimetres.csv"),
          Reader.of("dough.txt", "now dough"),
          Reader.of("dough.txt", "note dough 44% 24C"),
          Reader.of("night.csv", "rise --temps night.csv"),
          Reader.of("hours.csv", "rise --temps hours.csv --format json"),
          Reader.of("starter.json", "rise --dough-temp 25C --starter-file starter.json"),
          Reader.of("starter.json", "water --pour 30C --room 21C --starter-file starter.json"),
          Reader.of("harrow.txt", "rise --dough-temp 25C --flour-file harrow.txt --format csv"),
          Reader.of("harrow.txt", "flour read harrow.txt"),
          Reader.of("graded.txt", "water --dough-temp 25C --room 21C --flour-file graded.txt"),
          Reader.of("doughs.csv", "batch doughs.csv --threads 1"),
          Reader.of("doughs.jsonl", "batch doughs.jsonl --threads 1"),
          Reader.of("doughs.csv", "batch doughs.csv --format jsonl --threads 1"),
          Reader.of("class.csv", "class-day class.csv " + CLASS),
          Reader.of("staged.csv", "class-day staged.csv " + CLASS),
          Reader.of("roster.txt", "class-day class.csv --roster roster.txt " + CLASS),
          Reader.of("plan.json", "class-day --again plan.json --now 2027-03-13T10:40"),
          Reader.of("sour.txt", "feed --stages sour.txt --amount 900g"),
          Reader.of("trial.csv", "flour read trial.csv --format json"),
          Reader.of("trial.csv", "flour save new.txt --flour-name N --trial trial.csv"),
          Reader.of("part.csv.part", "batch doughs.csv --threads 1 --out part.csv --resume"),
          Reader.of("one-bake/bake.csv", "learn one-bake --save new.json"));

  private static final Map<String, String> TEXTS =
      new TreeMap<>(
          Map.of(
              "doughs.csv",
              "id,dough_temp,salt\nA,25C,2%\nB,70F,\nC,4C,1.8%\n",
              "doughs.jsonl",
              "{\"id\":\"A\",\"dough_temp\":\"25C\"}\n{\"id\":\"B\",\"dough_temp\":\"18C\"}\n",
              "class.csv",
              "name,loaves,starter,dough_temp\nwheat,1,20%,24C\nrye mix,2,10%,24C\n",
              "trial.csv",
              "trial,person,hydration,grade\n1,Ann,60%,no window\n1,Ann,66%,thin window\n"
                  + "1,Ann,72%,thin window\n1,Ann,78%,tears\n",
              "night.csv",
              "time,temperature C\n2027-03-06 08:00,25.1\n2027-03-06 10:10,24.9\n"
                  + "2027-03-06 12:20,24.8\n",
              "hours.csv",
              "hours;temperature F\n0;77,5\n1,5;76,9\n3;76\n",
              "graded.txt",
              "# doughtide flour record\nname: Harrow white\nlot: A12\ndate: 2027-03-06\n"
                  + "flour: white:80%,rye:20%\nprotein: 11%\nmoisture: 14%\nash: 0.6%\n"
                  + "bowl: 6 March; Ann; 72%; thin window\n"
                  + "bowl: 6 March; Ann; 76%; thin window\n",
              "millimetres.csv",
              "flour: white\nstarter: 20%\nhydration: 70%\ndough temp: 25C\nmixed at: 09:30\n"
                  + "start height: 52 mm\n\ntime;height mm;dough temp C;pH;note\n"
                  + "11:30;56;25,0;;\n12:30;61;24,8;5,1;=1+1\n13:30;70;24,7;;\n",
              "part.csv.part",
              ""));

  static final SortedSet<String> NAMES = new TreeSet<>();

  static {
    TEXTS.put(
        "dough.txt",
        "mixed at: 2027-03-06T04:00\nzone: Europe/London\ndough temp: 25C\nroom: 21C\n"
            + "start height: 62 mm\ntime;rise %;dough temp C;note\n"
            + "2027-03-06 06:00;8;24.6;\n2027-03-06 06:30;;;fold\n");
    TEXTS.put(
        "sour.txt",
        "starter flour: rye\nstage: fresh sour, 1:5, dough yield 200, rye, 26C, 6h\n"
            + "stage: full sour, 1:4:4, rye, 28C, until ripe\n");
    TEXTS.put("roster.txt", "name;dough;flour;loaves;language\nAnn;wheat;;1;en\nBo;wheat;;2;de\n");
    TEXTS.put(
        "staged.csv",
        "name,loaves,starter,dough_temp,stage\nwheat,1,20%,24C,\n"
            + "rye,1,20%,26C,\"sour, 1:4:4, rye, 28C, until ripe\"\n");
    NAMES.addAll(TEXTS.keySet());
    NAMES.addAll(List.of("starter.json", "harrow.txt", "quayside-today.csv", "quayside-bakes"));
    NAMES.addAll(List.of(".", "none/none.csv", "/dev/null", "/dev/full", "é ü.pdf", "a.svg"));
  }

  private final Path folder;
  private final Map<Path, byte[]> good = new HashMap<>();
  private final Map<Path, Object> stamps = new HashMap<>();

  private FuzzSamples(Path folder) {
    this.folder = folder;
  }

  /** Makes the files. */
  static FuzzSamples in(Path folder) throws IOException {
    DemoReadings.learnedIn(folder);
    for (Map.Entry<String, String> text : TEXTS.entrySet()) {
      Files.writeString(folder.resolve(text.getKey()), text.getValue());
    }
    made(folder, "flour save harrow.txt --flour-name Harrow --protein 12.4% --hydration 71%");
    made(folder, "batch doughs.csv --out whole.csv --threads 1");
    Files.write(
        folder.resolve("part.csv.part"),
        (String.join("\n", Files.readAllLines(folder.resolve("whole.csv")).subList(0, 2)) + "\n")
            .getBytes(java.nio.charset.StandardCharsets.UTF_8));
    Files.createDirectory(folder.resolve("one-bake"));
    Files.copy(folder.resolve("quayside-today.csv"), folder.resolve("one-bake/bake.csv"));
    Path approved = Path.of(System.getProperty("doughtide.testdata"), "approved", "json");
    Files.copy(approved.resolve("class-day.json"), folder.resolve("plan.json"));
    Files.copy(approved.resolve("bake-day.json"), folder.resolve("bake.json"));
    FuzzSamples samples = new FuzzSamples(folder);
    for (Path file : samples.files()) {
      samples.good.put(file, Files.readAllBytes(file));
      samples.stamps.put(file, stamp(file));
    }
    return samples;
  }

  private static void made(Path folder, String words) {
    CliRun run = CliRun.in(TestEnvironment.in(folder), words.split(" "));
    if (run.code() != Main.OK) {
      throw new IllegalStateException(run.err());
    }
  }

  /** What stands in the files of fixed text. */
  static String text() {
    return String.join("\n", TEXTS.values());
  }

  /** Removes what a call has made and puts back what it or its maker has changed. */
  void putRight() throws IOException {
    for (Path file : files()) {
      if (!good.containsKey(file)) {
        Files.delete(file);
      }
    }
    for (Map.Entry<Path, byte[]> each : good.entrySet()) {
      Path file = each.getKey();
      if (!Files.exists(file) || !stamp(file).equals(stamps.get(file))) {
        Files.write(file, each.getValue());
        stamps.put(file, stamp(file));
      }
    }
  }

  private static Object stamp(Path file) throws IOException {
    BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
    return List.of(attributes.lastModifiedTime(), attributes.size(), "" + attributes.fileKey());
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(path -> !Files.isDirectory(path)).sorted().toList();
    }
  }
}
