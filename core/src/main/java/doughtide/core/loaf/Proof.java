package doughtide.core.loaf;

import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.Temperature;
import doughtide.core.quantity.Value;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/**
 * What happens to the dough after bulk fermentation: bench rest and shaping, then a proof in the
 * room, in the cold, or one after the other, then the oven. Immutable.
 *
 * <pre>{@code
 * Proof night = Proof.inCold(Temperature.ofCelsius(4), 12).withPiece(Mass.ofGrams(850), PieceForm.ROUND);
 * }</pre>
 */
public final class Proof extends Value {
  private static final long serialVersionUID = 1;

  /** Dividing, bench rest and shaping together, hours (common practice, no source). */
  public static final double USUAL_REST_HOURS = 0.5;

  private final double restHours;
  private final @Nullable Temperature room;
  private final double roomHours;
  private final @Nullable Temperature cold;
  private final double holdHours;
  private final @Nullable Double ovenHour;
  private final Mass mass;
  private final PieceForm form;
  private final @Nullable Rise target;

  private Proof(
      double restHours,
      @Nullable Temperature room,
      double roomHours,
      @Nullable Temperature cold,
      double holdHours,
      @Nullable Double ovenHour,
      Mass mass,
      PieceForm form,
      @Nullable Rise target) {
    this.restHours = Checks.inRange("bench rest and shaping", restHours, 0, 12, "h");
    this.room = room;
    this.roomHours = Checks.inRange("proof in the room", roomHours, 0, 48, "h");
    this.cold = cold;
    this.holdHours = Checks.inRange("time in the cold", holdHours, 0, 96, "h");
    this.ovenHour = ovenHour;
    Checks.inRange(
        "mass of the piece", Checks.given("mass of the piece", mass).grams(), 20, 50_000, "g");
    this.mass = mass;
    this.form = Checks.given("form of the piece", form);
    this.target = target;
    room().ifPresent(t -> Checks.inRange("proof temperature", t.celsius(), 0, 45, "°C"));
    cold().ifPresent(t -> Checks.inRange("temperature of the cold", t.celsius(), -30, 25, "°C"));
  }

  private static Proof usual(
      @Nullable Temperature room,
      double roomHours,
      @Nullable Temperature cold,
      double holdHours,
      @Nullable Double ovenHour) {
    return new Proof(
        USUAL_REST_HOURS,
        room,
        roomHours,
        cold,
        holdHours,
        ovenHour,
        Mass.ofGrams(850),
        PieceForm.ROUND,
        null);
  }

  /**
   * Into the cold after shaping and straight from there to the oven.
   *
   * @param cold temperature of the refrigerator, −30…25 °C
   * @param holdHours time in the cold, 0…96 h
   */
  public static Proof inCold(Temperature cold, double holdHours) {
    return usual(null, 0, Checks.given("temperature of the cold", cold), holdHours, null);
  }

  /**
   * Into the cold after shaping, and to the oven at a fixed hour.
   *
   * @param cold temperature of the refrigerator, −30…25 °C
   * @param ovenHour hours from mixing to the oven, 1…168
   */
  public static Proof inColdUntil(Temperature cold, double ovenHour) {
    double hour = Checks.inRange("hours from mixing to the oven", ovenHour, 1, 168, "h");
    return usual(null, 0, Checks.given("temperature of the cold", cold), 0, hour);
  }

  /**
   * In the room after shaping.
   *
   * @param room temperature around the piece, 0…45 °C
   * @param hours length of the proof, 0…48 h
   */
  public static Proof inRoom(Temperature room, double hours) {
    return usual(Checks.given("proof temperature", room), hours, null, 0, null);
  }

  /**
   * The same with a proof in the room before the cold.
   *
   * @param temperature temperature around the piece, 0…45 °C
   * @param hours 0…48 h
   */
  public Proof afterRoom(Temperature temperature, double hours) {
    return new Proof(
        restHours,
        Checks.given("proof temperature", temperature),
        hours,
        cold,
        holdHours,
        ovenHour,
        mass,
        form,
        target);
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
    Checks.inRange("target rise", Checks.given("target rise", rise).percent(), 10, 400, "%");
    return new Proof(restHours, room, roomHours, cold, holdHours, ovenHour, mass, form, rise);
  }

  /** Dividing, bench rest and shaping, hours. */
  public double restHours() {
    return restHours;
  }

  /** Temperature of the proof in the room, if there is one. */
  public Optional<Temperature> room() {
    return Optional.ofNullable(room);
  }

  /** Length of the proof in the room, hours. */
  public double roomHours() {
    return roomHours;
  }

  /** Temperature of the cold, if there is one. */
  public Optional<Temperature> cold() {
    return Optional.ofNullable(cold);
  }

  /** Hours in the cold where the oven has no fixed hour. */
  public double holdHours() {
    return holdHours;
  }

  /** Hours from mixing to the oven where that is fixed. */
  public OptionalDouble ovenHour() {
    return ovenHour == null ? OptionalDouble.empty() : OptionalDouble.of(ovenHour);
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
    return Optional.ofNullable(target);
  }

  /**
   * Hours from taking the piece off the bench to the oven; negative where the oven comes before.
   *
   * @param fromHours hour at which shaping is done
   */
  double hoursToOven(double fromHours) {
    return ovenHour == null ? roomHours + holdHours : ovenHour - fromHours;
  }

  @Override
  protected List<?> parts() {
    return Arrays.asList(restHours, room, roomHours, cold, holdHours, ovenHour, mass, form, target);
  }

  /** In a line, for logs: the piece and where it waits. */
  @Override
  public String toString() {
    StringJoiner words = new StringJoiner(", ");
    words.add(Checks.plain(mass.grams()) + " g " + form.key());
    words.add("rest " + Checks.plain(restHours) + " h");
    room()
        .ifPresent(
            at ->
                words.add(Checks.plain(roomHours) + " h at " + Checks.plain(at.celsius()) + " °C"));
    cold()
        .ifPresent(
            at ->
                words.add(
                    Checks.plain(holdHours)
                        + " h in the cold at "
                        + Checks.plain(at.celsius())
                        + " °C"));
    ovenHour().ifPresent(at -> words.add("oven at hour " + Checks.plain(at)));
    target().ifPresent(rise -> words.add("target " + Checks.plain(rise.percent()) + " %"));
    return words.toString();
  }
}
