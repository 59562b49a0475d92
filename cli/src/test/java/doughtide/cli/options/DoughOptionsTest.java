package doughtide.cli.options;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.cli.TestEnvironment;
import doughtide.cli.answer.Answer;
import doughtide.cli.answer.Section;
import doughtide.cli.answer.Timeline;
import doughtide.cli.args.ArgumentParser;
import doughtide.cli.args.CommandSpec;
import doughtide.core.document.Catalogue;
import doughtide.core.dough.StarterCondition;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DoughOptionsTest {

  @Test
  void everythingIsTakenOver() {
    DoughOptions dough =
        read(
            "--dough-temp", "76F",
            "--prefermented", "9.1%",
            "--starter-hydration", "50%",
            "--starter-condition", "Past-Best",
            "--starter-flour", "rye",
            "--flour", "white:80%,wholemeal wheat:20%",
            "--dough-yield", "172",
            "--salt", "1,8%",
            "--altitude", "5000ft");
    assertThat(dough.formula().prefermentedFlour()).isEqualTo(0.091, within(1e-12));
    assertThat(dough.formula().hydration().percent()).isEqualTo(72, within(1e-9));
    assertThat(dough.formula().salt().percent()).isEqualTo(1.8, within(1e-9));
    assertThat(dough.formula().altitude().metres()).isEqualTo(1524, within(1e-9));
    assertThat(dough.formula().flour().name()).isEqualTo("80 % white, 20 % wholemeal wheat");
    assertThat(dough.formula().starter().hydration().percent()).isEqualTo(50, within(1e-9));
    assertThat(dough.formula().starter().flour().name()).isEqualTo("rye");
    assertThat(dough.formula().starter().condition()).isEqualTo(StarterCondition.PAST_BEST);
    assertThat(dough.temperature().orElseThrow().first().celsius())
        .isEqualTo(24.4444, within(1e-4));
  }

  @Test
  void whatWasUnderstoodShowsBothConventions() {
    assertThat(lines(read("--dough-temp", "25C", "--starter", "20%", "--hydration", "72%")))
        .containsSubsequence(
            "Dough              white; hydration 72 % (dough yield 172); salt 2 %",
            "Starter            20 % of the flour added = 9.1 % prefermented flour; ripe,",
            "                   white, hydration 100 %",
            "Dough temperature  25 °C (77 °F)",
            "Kitchen            sea level");
  }

  @Test
  void anAssumedStarterIsSaid() {
    assertThat(lines(read()))
        .containsSequence(
            "Starter            20 % of the flour added = 9.1 % prefermented flour (assumed,",
            "                   say --starter); ripe, white, hydration 100 %");
  }

  private static DoughOptions read(String... words) {
    CommandSpec spec = CommandSpec.named("test", "test").options(DoughOptions.specs()).build();
    return DoughOptions.read(
        new ArgumentParser(spec, Catalogue.standard()).parse(List.of(words)),
        TestEnvironment.plain());
  }

  private static List<String> lines(DoughOptions dough) {
    Section.Builder body = Section.loose(Timeline.sinceMixing(Optional.empty()));
    dough.describe(body.section("understood", ""), "25 °C (77 °F)");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Answer.of("test", 1, "", body).text(new PrintStream(out, true, StandardCharsets.UTF_8));
    return out.toString(StandardCharsets.UTF_8).lines().toList();
  }
}
