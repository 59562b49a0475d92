package doughtide.core.loaf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.thermal.Material;
import doughtide.core.thermal.PieceShape;
import doughtide.core.thermal.Wall;
import org.junit.jupiter.api.Test;

class ProofTest {
  private static final Temperature COLD = Temperature.ofCelsius(4);
  private static final Temperature ROOM = Temperature.ofCelsius(22);

  @Test
  void eachChangeKeepsWhatWasSaidBefore() {
    Proof proof =
        Proof.inCold(COLD, 11)
            .afterRoom(ROOM, 1.5)
            .withRest(0.25)
            .withPiece(Mass.ofGrams(600), PieceForm.OVAL)
            .withTarget(Rise.ofPercent(70));

    assertThat(proof.cold()).contains(COLD);
    assertThat(proof.holdHours()).isEqualTo(11);
    assertThat(proof.room()).contains(ROOM);
    assertThat(proof.roomHours()).isEqualTo(1.5);
    assertThat(proof.restHours()).isEqualTo(0.25);
    assertThat(proof.mass()).isEqualTo(Mass.ofGrams(600));
    assertThat(proof.form()).isEqualTo(PieceForm.OVAL);
    assertThat(proof.target()).contains(Rise.ofPercent(70));
    assertThat(proof.ovenHour()).isEmpty();
  }

  @Test
  void usualPieceIsARoundOf850Grams() {
    Proof proof = Proof.inRoom(ROOM, 2);

    assertThat(proof.mass()).isEqualTo(Mass.ofGrams(850));
    assertThat(proof.form()).isEqualTo(PieceForm.ROUND);
    assertThat(proof.restHours()).isEqualTo(0.5);
    assertThat(proof.cold()).isEmpty();
    assertThat(proof.target()).isEmpty();
  }

  @Test
  void ovenComesAfterRoomAndColdOrAtItsHour() {
    assertThat(Proof.inCold(COLD, 11).afterRoom(ROOM, 1.5).hoursToOven(5)).isEqualTo(12.5);
    assertThat(Proof.inColdUntil(COLD, 20).hoursToOven(6)).isEqualTo(14);
    assertThat(Proof.inColdUntil(COLD, 20).hoursToOven(21)).isEqualTo(-1);
    assertThat(Proof.inColdUntil(COLD, 20).ovenHour()).hasValue(20);
  }

  @Test
  void everyNumberHasItsRange() {
    Proof proof = Proof.inCold(COLD, 1);

    assertThatThrownBy(() -> proof.withRest(12.1)).hasMessageContaining("outside 0…12 h");
    assertThatThrownBy(() -> proof.afterRoom(ROOM, 49)).hasMessageContaining("outside 0…48 h");
    assertThatThrownBy(() -> proof.afterRoom(Temperature.ofCelsius(46), 1))
        .hasMessageStartingWith("proof temperature 46 °C is outside 0…45 °C");
    assertThatThrownBy(() -> Proof.inCold(Temperature.ofCelsius(26), 1))
        .hasMessageStartingWith("temperature of the cold 26 °C is outside");
    assertThatThrownBy(() -> Proof.inColdUntil(COLD, 169)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> proof.withTarget(Rise.ofPercent(9)))
        .hasMessageStartingWith("target rise 9 % is outside 10…400 %");
  }

  @Test
  void formsLieAgainstWhatTheyAreProofedIn() {
    assertThat(PieceForm.ROUND.wall()).isEqualTo(Wall.of(Material.CANE_BASKET));
    assertThat(PieceForm.TIN.wall()).isEqualTo(Wall.of(Material.STEEL));
    assertThat(PieceForm.BAGUETTE.wall()).isEqualTo(Wall.NONE);
    assertThat(PieceForm.OVAL.shape()).isEqualTo(PieceShape.oval());
  }
}
