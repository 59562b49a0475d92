package doughtide.core.loaf;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What happens to the dough after bulk fermentation: bench rest and shaping, then a proof in the
 * room, in the cold, or one after the other, then the oven. Immutable.
 *
 * <pre>{@code
 * Proof night = Proof.inCold(Temperature.ofCelsius(4), 12).withPiece(Mass.ofGrams(850), PieceForm.ROUND);
 * }</pre>
 */
public final class Proof {
  /** Dividing, bench rest and shaping together, hours (common practice, no source). */
  public static final double USUAL_REST_HOURS = 0.5;

  private final double restHours;
  private final Optional<Temperature> room;
  private final double roomHours;
  private final Optional<Temperature> cold;
  private final double holdHours;
  private final OptionalDouble ovenHour;
  private final Mass mass;
  private final PieceForm form;
  private final Optional<Rise> target;

  private Proof(
      double restHours,
      Optional<Temperature> room,
      double roomHours,
      Optional<Temperature> cold,
      double holdHours,
      OptionalDouble ovenHour,
      Mass mass,
      PieceForm form,
      Optional<Rise> target) {
    this.restHours = Checks.inRange("bench rest and shaping", restHours, 0, 12, "h");
    this.room = room;
    this.roomHours = Checks.inRange("proof in the room", roomHours, 0, 48, "h");
    this.cold = cold;
    this.holdHours = Checks.inRange("time in the cold", holdHours, 0, 96, "h");
    this.ovenHour = ovenHour;
    Checks.inRange("mass of the piece", mass.grams(), 20, 50_000, "g");
    this.mass = mass;
    this.form = form;
    this.target = target;
    room.ifPresent(t -> Checks.inRange("proof temperature", t.celsius(), 0, 45, "°C"));
    cold.ifPresent(t -> Checks.inRange("temperature of the cold", t.celsius(), -30, 25, "°C"));
  }

  private static Proof usual(
      Optional<Temperature> room,
      double roomHours,
      Optional<Temperature> cold,
      double holdHours,
      OptionalDouble ovenHour) {
    return new Proof(
        USUAL_REST_HOURS,
        room,
        roomHours,
        cold,
        holdHours,
        ovenHour,
        Mass.ofGrams(850),
        PieceForm.ROUND,
        Optional.empty());
  }

  /**
   * Into the cold after shaping and straight from there to the oven.
   *
   * @param cold temperature of the refrigerator, −30…25 °C
   * @param holdHours time in the cold, 0…96 h
   */
  public static Proof inCold(Temperature cold, double holdHours) {
    return usual(Optional.empty(), 0, Optional.of(cold), holdHours, OptionalDouble.empty());
  }

  /**
   * Into the cold after shaping, and to the oven at a fixed hour.
   *
   * @param cold temperature of the refrigerator, −30…25 °C
   * @param ovenHour hours from mixing to the oven, 1…168
   */
  public static Proof inColdUntil(Temperature cold, double ovenHour) {
    double hour = Checks.inRange("hours from mixing to the oven", ovenHour, 1, 168, "h");
    return usual(Optional.empty(), 0, Optional.of(cold), 0, OptionalDouble.of(hour));
  }

  /**
   * In the room after shaping.
   *
   * @param room temperature around the piece, 0…45 °C
   * @param hours length of the proof, 0…48 h
   */
  public static Proof inRoom(Temperature room, double hours) {
    return usual(Optional.of(room), hours, Optional.empty(), 0, OptionalDouble.empty());
  }

  /**
   * The same with a proof in the room before the cold.
   *
   * @param temperature temperature around the piece, 0…45 °C
   * @param hours 0…48 h
   */
  public Proof afterRoom(Temperature temperature, double hours) {
    return new Proof(
        restHours, Optional.of(temperature), hours, cold, holdHours, ovenHour, mass, form, target);
  }

  /**
   * The same with another time for dividing, bench rest and shaping.
   *
   * @param hours 0…12 h
   */
  public Proof withRest(double hours) {
    return new Proof(hours, room, roomHours, cold, holdHours, ovenHour, mass, form, target);
  }

  /**
   * The same with another piece.
   *
   * @param newMass 20…50000 g
   * @param newForm what it is proofed in
   */
  public Proof withPiece(Mass newMass, PieceForm newForm) {
    return new Proof(
        restHours, room, roomHours, cold, holdHours, ovenHour, newMass, newForm, target);
  }

  /**
   * The same with another target: the jar-equivalent rise at the oven.
   *
   * @param rise 10…400 %
   */
  public Proof withTarget(Rise rise) {
    Checks.inRange("target rise", rise.percent(), 10, 400, "%");
    return new Proof(
        restHours, room, roomHours, cold, holdHours, ovenHour, mass, form, Optional.of(rise));
  }

  /** Dividing, bench rest and shaping, hours. */
  public double restHours() {
    return restHours;
  }

  /** Temperature of the proof in the room, if there is one. */
  public Optional<Temperature> room() {
    return room;
  }

  /** Length of the proof in the room, hours. */
  public double roomHours() {
    return roomHours;
  }

  /** Temperature of the cold, if there is one. */
  public Optional<Temperature> cold() {
    return cold;
  }

  /** Hours in the cold where the oven has no fixed hour. */
  public double holdHours() {
    return holdHours;
  }

  /** Hours from mixing to the oven where that is fixed. */
  public OptionalDouble ovenHour() {
    return ovenHour;
  }

  /** Mass of the piece. */
  public Mass mass() {
    return mass;
  }

  /** Form of the piece. */
  public PieceForm form() {
    return form;
  }

  /** Target asked for; empty for the flour's usual one. */
  public Optional<Rise> target() {
    return target;
  }

  /**
   * Hours from taking the piece off the bench to the oven; negative where the oven comes before.
   *
   * @param fromHours hour at which shaping is done
   */
  double hoursToOven(double fromHours) {
    return ovenHour.isPresent() ? ovenHour.getAsDouble() - fromHours : roomHours + holdHours;
  }
}
