package doughtide.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.rise.RiseParameters;
import doughtide.report.chart.ChartFormat;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.lang.module.Configuration;
import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.apache.commons.math3.util.FastMath;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The finished jars on the module path. */
class ModulePathIT {

  private static final Path SELF_CONTAINED = Path.of(System.getProperty("doughtide.jar"));

  @Test
  void eachJarNamesItsModule() throws Exception {
    ModuleFinder jars =
        ModuleFinder.of(jarOf(RiseParameters.class), jarOf(ChartFormat.class), jarOf(Main.class));
    assertThat(jars.findAll().stream().map(each -> each.descriptor().name()))
        .containsExactlyInAnyOrder("doughtide.core", "doughtide.report", "doughtide.cli");
    assertThat(ModuleFinder.of(SELF_CONTAINED).find("doughtide.cli")).isPresent();
  }

  @Test
  void coreWorksAsAModuleWithItsOneDependency() throws Exception {
    ModuleFinder jars = ModuleFinder.of(jarOf(RiseParameters.class), jarOf(FastMath.class));
    Configuration resolved =
        ModuleLayer.boot()
            .configuration()
            .resolve(jars, ModuleFinder.of(), Set.of("doughtide.core"));
    ModuleLayer layer =
        ModuleLayer.boot()
            .defineModulesWithOneLoader(resolved, ClassLoader.getPlatformClassLoader());
    Class<?> inModule =
        layer.findLoader("doughtide.core").loadClass(RiseParameters.class.getName());
    assertThat(inModule.getModule().getName()).isEqualTo("doughtide.core");
    assertThat(inModule.getMethod("standard").invoke(null))
        .hasToString(RiseParameters.standard().toString());
  }

  @Test
  void theSelfContainedJarRunsAsAModule() throws Exception {
    assertThat(run("--version")).matches("doughtide \\d+\\.\\d+\\.\\d+\\R");
    assertThat(run("rise", "--dough-temp", "25C")).contains("risen 50 %");
  }

  /** Every line of the guide, in a module of somebody else beside the jars as they are released. */
  @Test
  @Tag("long")
  void theTasksOfTheGuideRunInAModuleOfTheirOwn(@TempDir Path folder) throws Exception {
    Path info = folder.resolve("module-info.java");
    Path guide = Files.createDirectories(folder.resolve("kitchen")).resolve("Guide.java");
    Files.writeString(info, MODULE);
    Files.writeString(guide, program());
    String classes = folder.resolve("classes").toString();
    String jars = jarsOfAll();
    JavaCompiler javac = ToolProvider.getSystemJavaCompiler();
    ByteArrayOutputStream said = new ByteArrayOutputStream();

    javac.run(null, said, said, "-p", jars, "-d", classes, info.toString(), guide.toString());
    String path = jars + File.pathSeparator + classes;
    String output =
        java("-p", path, "--add-modules", "ALL-MODULE-PATH", "-m", "kitchen/kitchen.Guide");

    assertThat(said.toString(UTF_8)).doesNotContain("error");
    assertThat(output).isEqualTo("13 blocks in module kitchen");
  }

  private static final String MODULE =
      "module kitchen { requires doughtide.core; requires doughtide.report; requires"
          + " doughtide.cli; }";

  /** What the guide takes as given. */
  private static final String GIVEN =
      """
      static RiseForecast forecast = RiseForecaster.standard().forecast(
          DoughFormula.builder().build(), DoughTemperature.steady(Temperature.ofCelsius(25)));
      static String text =
          "starter: 20%\\ndough temp: 25C\\nmixed at: 09:30\\ntime,rise %\\n12:30,30\\n14:00,70";
      static BakeDay day = BakeDay.builder().readyAt(36).cold(Temperature.ofCelsius(4))
          .bench(new BenchHours(List.of(new BenchInterval(6.5, 22), new BenchInterval(30, 37))))
          .doughCelsius(List.of(24.0)).starterPercents(List.of(20.0)).build();
      static Words words = Words.in(Language.ENGLISH);
      static ByteArrayOutputStream out = new ByteArrayOutputStream();
      """;

  private static String program() throws IOException {
    Path root = Path.of(System.getProperty("doughtide.testdata")).getParent();
    String text = Files.readString(root.resolve("core/src/main/javadoc/overview.html"));
    List<String> blocks =
        Pattern.compile("<pre>\\{@code\\n(.*?)\\n}</pre>", Pattern.DOTALL)
            .matcher(text)
            .results()
            .map(block -> block.group(1))
            .toList();
    StringBuilder members = new StringBuilder(GIVEN);
    StringBuilder calls = new StringBuilder();
    for (int i = 0; i < blocks.size(); i++) {
      boolean type = blocks.get(i).startsWith("public record");
      String start = type ? "" : "static void task" + i + "() throws Exception {\n";
      members.append(start).append(blocks.get(i)).append(type ? "\n" : "\n}\n");
      calls.append(type ? "" : "task" + i + "(); ");
    }
    String end =
        "System.out.print(\"%d blocks in \" + Guide.class.getModule()); }}"
            .formatted(blocks.size());
    return imports() + "public class Guide {\n" + members + MAIN + calls + end;
  }

  private static final String MAIN = "public static void main(String[] words) throws Exception { ";

  private static String imports() {
    String core =
        Stream.of("day document dough forecast kinetics learning loaf quantity rise thermal")
            .flatMap(names -> Stream.of(names.split(" ")))
            .map(name -> "import doughtide.core." + name + ".*;\n")
            .collect(Collectors.joining());
    String report =
        Stream.of("chart", "handout", "page", "words")
            .map(name -> "import doughtide.report." + name + ".*;\n")
            .collect(Collectors.joining());
    return "package kitchen;\n"
        + core
        + report
        + "import doughtide.cli.batch.BatchRows; import doughtide.core.document.ReadingsDocument.*;"
        + "import java.io.*; import java.time.*; import java.util.*;"
        + "import java.util.concurrent.atomic.*;\n";
  }

  /** Our jars and what they need, without what only tests need. */
  private static String jarsOfAll() {
    return Stream.of(System.getProperty("java.class.path").split(File.pathSeparator))
        .filter(each -> NEEDED.matcher(Path.of(each).getFileName().toString()).find())
        .collect(Collectors.joining(File.pathSeparator));
  }

  private static final Pattern NEEDED =
      Pattern.compile(
          "^(doughtide-|commons-(math3|logging|cli|codec|lang3)|xchart|pdfbox|fontbox|graphics2d|batik-"
              + "|xmlgraphics-|fastcsv|jackson-core|ical4j|slf4j-|threeten-extra).*jar$");

  private static String run(String... words) throws Exception {
    Stream<String> start =
        Stream.of("-p", SELF_CONTAINED.toString(), "-m", "doughtide.cli/" + Main.class.getName());
    return java(Stream.concat(start, Stream.of(words)).toArray(String[]::new));
  }

  private static String java(String... words) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Process process =
        new ProcessBuilder(Stream.concat(Stream.of(java), Stream.of(words)).toList())
            .redirectErrorStream(true)
            .start();
    String output = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).as(output).isZero();
    return output;
  }

  private static Path jarOf(Class<?> type) throws URISyntaxException {
    return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
  }
}
