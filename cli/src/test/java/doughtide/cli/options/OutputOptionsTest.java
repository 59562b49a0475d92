package doughtide.cli.options;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.cli.TestEnvironment;
import doughtide.cli.args.ArgumentParser;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.file.OutputFile;
import doughtide.core.document.Catalogue;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputOptionsTest {

  @TempDir Path folder;

  @Test
  void theFormIsTextUnlessSaid() {
    assertThat(OutputOptions.format(parse())).isEqualTo(OutputOptions.Format.TEXT);
    assertThat(OutputOptions.format(parse("--format", "JSON")))
        .isEqualTo(OutputOptions.Format.JSON);
    assertThatThrownBy(() -> OutputOptions.format(parse("--format", "xml")))
        .hasMessage("--format xml is not known: use text, json, csv");
  }

  @Test
  void aChartEndsAsAChart() {
    assertThat(chart("--chart", "a b.PDF").ending()).isEqualTo("pdf");
    assertThatThrownBy(() -> chart("--chart", "rise.doc"))
        .hasMessageContaining("must end in .pdf, .svg or .png");
  }

  @Test
  void aChartIsReplacedOnlyWhenAsked() throws IOException {
    Files.writeString(folder.resolve("rise.svg"), "old");
    assertThatThrownBy(() -> chart("--chart", "rise.svg")).hasMessageContaining("--overwrite");
    chart("--chart", "rise.svg", "--overwrite").write("new");
    assertThat(folder.resolve("rise.svg")).hasContent("new");
  }

  private OutputFile chart(String... words) {
    return OutputOptions.chart(parse(words), TestEnvironment.in(folder)).orElseThrow();
  }

  private static Arguments parse(String... words) {
    CommandSpec spec =
        CommandSpec.named("test", "test")
            .options(
                OutputOptions.format(), OutputOptions.chart("rise.pdf"), OutputOptions.overwrite())
            .build();
    return new ArgumentParser(spec, Catalogue.standard()).parse(List.of(words));
  }
}
