package doughtide.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.rise.RiseParameters;
import doughtide.report.chart.ChartFormat;
import java.lang.module.Configuration;
import java.lang.module.ModuleFinder;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.math3.util.FastMath;
import org.junit.jupiter.api.Test;

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

  private static String run(String... words) throws Exception {
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    List<String> start =
        List.of(
            java, "-p", SELF_CONTAINED.toString(), "-m", "doughtide.cli/" + Main.class.getName());
    Process process =
        new ProcessBuilder(Stream.concat(start.stream(), Stream.of(words)).toList())
            .redirectErrorStream(true)
            .start();
    String output = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).isZero();
    return output;
  }

  private static Path jarOf(Class<?> type) throws URISyntaxException {
    return Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI());
  }
}
