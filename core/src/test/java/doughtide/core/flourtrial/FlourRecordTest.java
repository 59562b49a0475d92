package doughtide.core.flourtrial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Share;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FlourRecordTest {
  private static final FlourRecord HARROW =
      FlourRecord.named("Harrow strong white", FlourClass.STRONG_WHITE);

  @Test
  void putsTheFiguresOfTheBagIntoTheFlour() {
    Flour flour =
        HARROW.withProteinPercent(13.1).withMoisturePercent(12).withAshPercent(0.6).toFlour();
    assertThat(flour.name()).isEqualTo("Harrow strong white");
    assertThat(flour.composition().protein()).isCloseTo(0.131, within(1e-12));
    assertThat(flour.composition().moisture()).isCloseTo(0.12, within(1e-12));
    assertThat(flour.composition().ash()).isCloseTo(0.006, within(1e-12));
  }

  @Test
  void aMixAddsUp() {
    FlourRecord mix =
        new FlourRecord(
            "Quayside mix",
            Optional.of("L1"),
            Optional.of(LocalDate.of(2026, 3, 14)),
            Flour.mix(
                List.of(
                    new Flour.Part(FlourClass.STRONG_WHITE.flour(), Share.ofPercent(80)),
                    new Flour.Part(FlourClass.WHOLEMEAL_WHEAT.flour(), Share.ofPercent(20)))),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of(),
            OptionalDouble.of(74));
    assertThat(mix.toFlour().composition().protein()).isCloseTo(0.1256, within(1e-12));
    assertThat(mix.hydration()).contains(Share.ofPercent(74));
    assertThat(mix.fit()).isEmpty();
  }

  @Test
  void fitsItsOwnBowls() {
    FlourRecord graded =
        HARROW
            .withLot("L2")
            .withDate(LocalDate.of(2026, 3, 14))
            .withBowls(
                List.of(
                    new GradedBowl("first", "A", 72, Grade.THIN_WINDOW),
                    new GradedBowl("first", "A", 80, Grade.TORN)));
    assertThat(graded.lot()).contains("L2");
    assertThat(graded.fit().orElseThrow().limit().likelyPercent()).isBetween(74.0, 80.0);
    assertThat(graded.withHydrationPercent(71).hydration()).contains(Share.ofPercent(71));
  }

  @Test
  void ryeIsJudgedAsAPasteAndMixedWetter() {
    FlourRecord rye = FlourRecord.named("Fenside rye", FlourClass.RYE);
    assertThat(BowlTest.of(rye.toFlour())).isEqualTo(BowlTest.PASTE);
    assertThat(BowlTest.of(HARROW.toFlour())).isEqualTo(BowlTest.WINDOW);
    for (FlourClass each : List.of(FlourClass.RYE, FlourClass.WHOLEMEAL_RYE)) {
      assertThat(AbsorptionPrior.of(each.flour()).limitPercent())
          .isBetween(BowlTest.PASTE.driest().percent(), BowlTest.PASTE.wettest().percent());
    }
    assertThat(HARROW.notes()).isEmpty();
  }

  @Test
  void refusesWhatNoFlourIs() {
    assertThatThrownBy(() -> HARROW.withProteinPercent(60)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> HARROW.withMoisturePercent(25)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> HARROW.withHydrationPercent(Double.NaN))
        .isInstanceOf(InputException.class);
    assertThatThrownBy(() -> FlourRecord.named(" ", FlourClass.WHITE))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("flour name");
  }
}
