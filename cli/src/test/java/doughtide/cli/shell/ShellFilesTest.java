package doughtide.cli.shell;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import doughtide.cli.CliRun;
import doughtide.cli.Commands;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.options.KitchenOptions;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Completion and manual know every command and option, because they are made from them. */
class ShellFilesTest {
  private static final Map<String, String> OPTION =
      Map.of("bash", "--%s", "zsh", "--%s[", "fish", "-l %s ");

  @TempDir Path folder;

  private static List<CommandSpec> specs() {
    return Commands.NAMES.stream()
        .map(name -> KitchenOptions.added(Commands.named(name).spec()))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"bash", "zsh", "fish"})
  void aShellCompletesEveryCommandAndOption(String shell) {
    String script = CliRun.of("completion", shell).out();
    for (CommandSpec spec : specs()) {
      assertThat(script).contains(spec.name());
      for (OptionSpec option : spec.options()) {
        assertThat(script).contains(OPTION.get(shell).formatted(option.name()));
      }
      for (CommandSpec.Action action : spec.actions()) {
        assertThat(script).contains(action.name());
      }
    }
  }

  @Test
  void theManualTellsOfEveryCommandAndOption() {
    String page = CliRun.of("manual").out();
    for (CommandSpec spec : specs()) {
      assertThat(page).contains(".SS doughtide " + spec.name().replace("-", "\\-"));
      for (OptionSpec option : spec.options()) {
        assertThat(page).contains(".B " + option.typed().replace("-", "\\-"));
      }
    }
    assertThat(page.lines().filter(line -> line.startsWith(".")))
        .allMatch(line -> line.matches("\\.(TH|SH|SS|TP|B|PP|br).*"));
  }

  @Test
  void anotherShellIsRefused() {
    CliRun run = CliRun.of("completion", "tcsh");
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("shell 'tcsh' is not known: use one of bash, zsh, fish");
  }

  @Test
  void bashCompletesWhatIsTyped() throws Exception {
    assumeTrue(Files.isExecutable(Path.of("/bin/bash")));
    Files.writeString(folder.resolve("completion"), CliRun.of("completion", "bash").out());
    Files.writeString(folder.resolve("chart.png"), "");

    assertThat(bash("le")).isEqualTo("leave learn");
    assertThat(bash("rise", "--dough-t")).isEqualTo("--dough-temp");
    assertThat(bash("rise", "--dough-temp", "2")).isEmpty();
    assertThat(bash("rise", "--chart", "ch")).isEqualTo("chart.png");
    assertThat(bash("flour", "pl")).isEqualTo("plan");
    assertThat(bash("help", "wat")).isEqualTo("water");
  }

  private String bash(String... words) throws IOException, InterruptedException {
    String script =
        "source ./completion; compopt() { :; }; COMP_WORDS=(doughtide \"$@\"); COMP_CWORD=$#;"
            + " _doughtide; echo \"${COMPREPLY[*]}\"";
    List<String> call = new ArrayList<>(List.of("/bin/bash", "-c", script, "bash"));
    call.addAll(List.of(words));
    Process process = new ProcessBuilder(call).directory(folder.toFile()).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.waitFor()).isZero();
    return out.strip();
  }
}
