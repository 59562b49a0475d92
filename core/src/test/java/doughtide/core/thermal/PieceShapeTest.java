package doughtide.core.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Temperature;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PieceShapeTest {
  private static final DoughHeat HEAT = new DoughHeat(800, 2850, 0.3);

  private static final List<PieceShape> ALL =
      List.of(
          PieceShape.round(),
          PieceShape.oval(),
          PieceShape.baguette(),
          PieceShape.tin(),
          PieceShape.tub(),
          PieceShape.tub(300),
          PieceShape.jar(),
          PieceShape.jar(90),
          PieceShape.bowl());

  @Test
  void everyBodyKeepsTheRatioOfVolumeToSurface() {
    for (PieceShape shape : ALL) {
      PieceGeometry piece = shape.geometry(Mass.ofGrams(900), 800);
      assertThat(piece.volumeM3()).isCloseTo(0.9 / 800, within(1e-15));
      double bodyRatio = piece.lengthMetres() / piece.form().dimension();
      assertThat(bodyRatio)
          .as(shape.toString())
          .isCloseTo(piece.volumeM3() / piece.areaM2(), within(1e-15));
    }
  }

  @Test
  void areasAreThoseOfTheSolids() {
    double ball = 4.0 / 3 * Math.PI;
    assertThat(PieceShape.round(1).ofVolume(ball / 1000).areaM2())
        .isCloseTo(4 * Math.PI / 100, within(1e-12));
    // Oblate spheroid of half axes 1, 1, 0.6 dm: 2π·(1 + 0.36/0.8·artanh 0.8) = 9.3896 dm².
    double area = PieceShape.round(0.6).ofVolume(0.6 * ball / 1000).areaM2() * 100;
    assertThat(area).isCloseTo(2 * Math.PI * (1 + 0.45 * 1.0986122886681098), within(1e-9));
    // Bar of thickness 2 dm and length 4 dm: a ball's volume and 2 dm of cylinder; area π·2·4.
    double bar = ball + 2 * Math.PI;
    assertThat(PieceShape.oval(2).ofVolume(bar / 1000).areaM2() * 100)
        .isCloseTo(8 * Math.PI, within(1e-9));
    assertThat(PieceShape.tin(2, 1).ofVolume(0.002).areaM2() * 100).isCloseTo(10, within(1e-9));
    assertThat(PieceShape.tub(200).ofVolume(Math.PI / 1000).areaM2() * 100)
        .isCloseTo(4 * Math.PI, within(1e-9));
    assertThat(PieceShape.bowl().ofVolume(ball / 2000).areaM2() * 100)
        .isCloseTo(3 * Math.PI, within(1e-9));
  }

  @Test
  void longPiecesAreCylindersFlatOnesSlabsCompactOnesSpheres() {
    assertThat(PieceShape.baguette().geometry(Mass.ofGrams(350), 700).form())
        .isEqualTo(BodyForm.CYLINDER);
    assertThat(PieceShape.tub(600).geometry(Mass.ofKilograms(3), 800).form())
        .isEqualTo(BodyForm.SLAB);
    assertThat(PieceShape.round().geometry(Mass.ofGrams(900), 800).form())
        .isEqualTo(BodyForm.SPHERE);
  }

  /**
   * An upright cylinder has an exact solution: the product of a slab's and a long cylinder's. The
   * body that stands for it keeps to what the class comment of PieceGeometry says.
   */
  @ParameterizedTest
  @CsvSource({
    "60, 200, 6",
    "100, 120, 3",
    "100, 120, 10",
    "90, 90, 6",
    "30, 400, 6",
    "50, 300, 6",
    "150, 200, 10"
  })
  void standsInForAnUprightCylinder(double depthMm, double diameterMm, double coefficient) {
    double volume = Math.PI / 4 * depthMm * diameterMm * diameterMm * 1e-9;
    PieceGeometry geometry = PieceShape.tub(diameterMm).ofVolume(volume);
    CoolingPiece piece = unit(geometry.conduction(HEAT, coefficient));
    CoolingPiece slab = unit(Conduction.of(BodyForm.SLAB, depthMm / 2000, HEAT, coefficient, 60));
    CoolingPiece bar =
        unit(Conduction.of(BodyForm.CYLINDER, diameterMm / 2000, HEAT, coefficient, 60));
    for (double hours = 0.25; hours < 20; hours *= 1.2) {
      double exact = slab.meanCelsius(hours) * bar.meanCelsius(hours);
      assertThat(piece.meanCelsius(hours)).as("hour %s", hours).isCloseTo(exact, within(0.03));
    }
    double hours = piece.hoursUntilCoreReaches(Temperature.ofCelsius(0.3)).orElseThrow();
    // The exact core is still warmer then, and no longer when a fifth more time has passed.
    assertThat(slab.coreCelsius(hours) * bar.coreCelsius(hours)).isGreaterThan(0.3);
    double later = hours / 0.83;
    assertThat(slab.coreCelsius(later) * bar.coreCelsius(later)).isLessThan(0.3);
  }

  private static CoolingPiece unit(Conduction body) {
    return CoolingPiece.start(
        body, Temperature.ofCelsius(1), TemperatureTrace.steady(Temperature.ofCelsius(0)));
  }

  @Test
  void wallsAndCoversInsulate() {
    PieceGeometry piece = PieceShape.tub().geometry(Mass.ofKilograms(1.5), 800);
    double free = piece.surfaceWPerM2K(Air.STILL_ROOM, Wall.NONE, Cover.OPEN);
    double plastic =
        piece.surfaceWPerM2K(Air.STILL_ROOM, Wall.of(Material.POLYPROPYLENE), Cover.OPEN);
    double basket = piece.surfaceWPerM2K(Air.STILL_ROOM, Wall.of(Material.CANE_BASKET), Cover.OPEN);
    double covered =
        piece.surfaceWPerM2K(Air.STILL_ROOM, Wall.of(Material.CANE_BASKET), Cover.COVERED);
    assertThat(free).isBetween(5.9, 10.0);
    assertThat(plastic).isLessThan(free);
    assertThat(basket).isLessThan(plastic);
    assertThat(covered).isLessThan(basket);
  }

  @Test
  void aWallIsThicknessOverConductivity() {
    assertThat(new Wall(Material.OAK, 21).resistanceM2KPerW()).isCloseTo(0.1, within(1e-12));
    assertThat(Wall.NONE.resistanceM2KPerW()).isZero();
  }

  @Test
  void theExampleOfTheClassWorks() {
    PieceGeometry loaf = PieceShape.round().geometry(Mass.ofGrams(850), 800);
    double coefficient =
        loaf.surfaceWPerM2K(Air.STILL_COLD, Wall.of(Material.CANE_BASKET), Cover.COVERED);
    Conduction conduction = loaf.conduction(new DoughHeat(800, 2850, 0.3), coefficient);
    CoolingPiece piece =
        CoolingPiece.start(
            conduction,
            Temperature.ofCelsius(24),
            TemperatureTrace.steady(Temperature.ofCelsius(4)));
    OptionalDouble hours = piece.hoursUntilCoreReaches(Temperature.ofCelsius(10));
    assertThat(hours.orElseThrow()).isBetween(2.0, 14.0);
  }

  @Test
  void refusesImpossibleProportions() {
    assertThatThrownBy(() -> PieceShape.round(1.4))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("height over width of the loaf 1.4 is outside 0.2…1");
    assertThatThrownBy(() -> PieceShape.tub(10)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> PieceShape.oval(Double.NaN)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> new Wall(Material.OAK, -1)).isInstanceOf(InputException.class);
    assertThatThrownBy(() -> PieceShape.bowl().ofVolume(Double.NaN))
        .isInstanceOf(InputException.class);
  }
}
