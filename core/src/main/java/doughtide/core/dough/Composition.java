package doughtide.core.dough;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InputException;
import java.io.Serializable;

/**
 * What a flour is made of, as mass fractions of the flour as sold. The six parts add up to 1.
 *
 * @param protein 0…0.5 (nitrogen × 5.7)
 * @param fat 0…0.3
 * @param carbohydrate starch and sugars without fibre, 0…1
 * @param fibre dietary fibre, 0…0.6
 * @param ash minerals, 0…0.1
 * @param moisture water in the flour as sold, 0…0.2
 */
public record Composition(
    double protein, double fat, double carbohydrate, double fibre, double ash, double moisture)
    implements Serializable {

  private static final double SUM_TOLERANCE = 1e-6;

  /**
   * @param protein 0…0.5 (nitrogen × 5.7)
   * @param fat 0…0.3
   * @param carbohydrate starch and sugars without fibre, 0…1
   * @param fibre dietary fibre, 0…0.6
   * @param ash minerals, 0…0.1
   * @param moisture water in the flour as sold, 0…0.2
   * @throws InputException if a part is outside its range or the parts do not add up to 1
   */
  public Composition {
    Checks.inRange("protein", protein * 100, 0, 50, "%");
    Checks.inRange("fat", fat * 100, 0, 30, "%");
    Checks.inRange("carbohydrate", carbohydrate * 100, 0, 100, "%");
    Checks.inRange("fibre", fibre * 100, 0, 60, "%");
    Checks.inRange("ash", ash * 100, 0, 10, "%");
    Checks.inRange("moisture", moisture * 100, 0, 20, "%");
    double sum = protein + fat + carbohydrate + fibre + ash + moisture;
    if (Math.abs(sum - 1) > SUM_TOLERANCE) {
      throw new InputException(
          "composition.sum",
          "flour composition adds up to "
              + Checks.plain(sum * 100)
              + " %, it must add up to 100 %: give all parts or use ofParts");
    }
  }

  /**
   * {@return composition from the parts a flour bag states, as fractions of the flour as sold; what
   * is left is carbohydrate}
   *
   * @param protein 0…0.5
   * @param fat 0…0.3
   * @param fibre 0…0.6
   * @param ash 0…0.1
   * @param moisture 0…0.2
   */
  public static Composition ofParts(
      double protein, double fat, double fibre, double ash, double moisture) {
    double rest = 1 - protein - fat - fibre - ash - moisture;
    return new Composition(protein, fat, rest, fibre, ash, moisture);
  }

  /**
   * {@return the same flour dried or damped to another moisture: all dry parts keep their ratio}
   *
   * @param newMoisture 0…0.2
   */
  public Composition withMoisture(double newMoisture) {
    double scale = (1 - newMoisture) / (1 - moisture);
    return new Composition(
        protein * scale,
        fat * scale,
        carbohydrate * scale,
        fibre * scale,
        ash * scale,
        newMoisture);
  }

  /**
   * {@return the same flour with another protein content; carbohydrate gives way}
   *
   * @param newProtein 0…0.5
   */
  public Composition withProtein(double newProtein) {
    return ofParts(newProtein, fat, fibre, ash, moisture);
  }

  /**
   * {@return linear mix of two compositions}
   *
   * @param other the other flour
   * @param share share of the other flour, 0…1
   */
  public Composition mixedWith(Composition other, double share) {
    double own = 1 - share;
    return new Composition(
        own * protein + share * other.protein,
        own * fat + share * other.fat,
        own * carbohydrate + share * other.carbohydrate,
        own * fibre + share * other.fibre,
        own * ash + share * other.ash,
        own * moisture + share * other.moisture);
  }

  /**
   * Heat capacity of the flour: mass fractions times the parts' own (Choi &amp; Okos 1986, from
   * memory).
   *
   * @param celsius −2…50 °C
   * @return J/(kg K)
   */
  public double heatCapacityJPerKgK(double celsius) {
    return protein * ComponentProperties.PROTEIN.heatCapacityJPerKgK(celsius)
        + fat * ComponentProperties.FAT.heatCapacityJPerKgK(celsius)
        + carbohydrate * ComponentProperties.CARBOHYDRATE.heatCapacityJPerKgK(celsius)
        + fibre * ComponentProperties.FIBRE.heatCapacityJPerKgK(celsius)
        + ash * ComponentProperties.ASH.heatCapacityJPerKgK(celsius)
        + moisture * ComponentProperties.WATER.heatCapacityJPerKgK(celsius);
  }
}
