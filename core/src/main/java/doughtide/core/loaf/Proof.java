package doughtide.core.loaf;

import doughtide.core.dough.Flour;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.Mass;
import doughtide.core.quantity.Rise;
import doughtide.core.quantity.SentRecord;
import doughtide.core.quantity.Temperature;
import java.io.Serializable;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * What happens to the dough after bulk fermentation: bench rest and shaping, then a proof in the
 * room, in the cold, or one after the other, then the oven. Immutable.
 *
 * <pre>{@code
 * Proof night = Proof.inCold(Temperature.ofCelsius(4), 12).withPiece(Mass.ofGrams(850), PieceForm.ROUND);
 * }</pre>
 *
 * @param restHours dividing, bench rest and shaping, 0…12 h
 * @param room temperature of the proof in the room, if there is one, 0…45 °C
 * @param roomHours its length, 0…48 h
 * @param coldPlace the cold, if there is one
 * @param holdHours time in the cold where the oven has no fixed hour, 0…96 h
 * @param ovenHour hours from mixing to the oven where that is fixed
 * @param mass of the piece, 20…50000 g
 * @param form of the piece
 * @param shaping how firmly it is handled; empty for as usual
 * @param target rise wanted at the oven; empty for the flour's usual one
 */
public record Proof(
    double restHours,
    Optional<Temperature> room,
    double roomHours,
    Optional<Cold> coldPlace,
    double holdHours,
    OptionalDouble ovenHour,
    Mass mass,
    PieceForm form,
    Optional<Shaping> shaping,
    Optional<Rise> target)
    implements Serializable {
  static final double LEAST_TARGET_PERCENT = 10;
  static final double MOST_TARGET_PERCENT = 400;

  /** Dividing, bench rest and shaping together, hours (common practice, no source). */
  public static final double USUAL_REST_HOURS = 0.5;

  /**
   * Checks every range.
   *
   * @param restHours dividing, bench rest and shaping, 0…12 h
   * @param room temperature of the proof in the room, if there is one, 0…45 °C
   * @param roomHours its length, 0…48 h
   * @param coldPlace the cold, if there is one
   * @param holdHours time in the cold where the oven has no fixed hour, 0…96 h
   * @param ovenHour hours from mixing to the oven where that is fixed
   * @param mass of the piece, 20…50000 g
   * @param form of the piece
   * @param shaping how firmly it is handled; empty for as usual
   * @param target rise wanted at the oven; empty for the flour's usual one
   */
  public Proof {
    Checks.given("cold place", coldPlace);
    Checks.given("oven hour", ovenHour);
    Checks.given("shaping", shaping);
    Checks.given("target", target);
    Checks.inRange("bench rest and shaping", restHours, 0, 12, "h");
    Checks.inRange("proof in the room", roomHours, 0, 48, "h");
    Checks.inRange("time in the cold", holdHours, 0, 96, "h");
    Checks.inRange(
        "mass of the piece", Checks.given("mass of the piece", mass).grams(), 20, 50_000, "g");
    Checks.given("form of the piece", form);
    room.ifPresent(t -> Checks.inRange("proof temperature", t.celsius(), 0, 45, "°C"));
  }

  /** Changes named parts of a proof. */
  private static final class Parts {
    private double restHours = USUAL_REST_HOURS;
    private Optional<Temperature> room = Optional.empty();
    private double roomHours;
    private Optional<Cold> coldPlace = Optional.empty();
    private double holdHours;
    private OptionalDouble ovenHour = OptionalDouble.empty();
    private Mass mass = Mass.ofGrams(850);
    private PieceForm form = PieceForm.ROUND;
    private Optional<Shaping> shaping = Optional.empty();
    private Optional<Rise> target = Optional.empty();

    Proof proof() {
      return new Proof(
          restHours, room, roomHours, coldPlace, holdHours, ovenHour, mass, form, shaping, target);
    }
  }

  private static Proof usual(Consumer<Parts> given) {
    Parts parts = new Parts();
    given.accept(parts);
    return parts.proof();
  }

  private Proof with(Consumer<Parts> changed) {
    Parts parts = new Parts();
    parts.restHours = restHours;
    parts.room = room;
    parts.roomHours = roomHours;
    parts.coldPlace = coldPlace;
    parts.holdHours = holdHours;
    parts.ovenHour = ovenHour;
    parts.mass = mass;
    parts.form = form;
    parts.shaping = shaping;
    parts.target = target;
    changed.accept(parts);
    return parts.proof();
  }

  /**
   * {@return a proof, into a cold of which only the dial is known, after shaping, and straight from
   * there to the oven}
   *
   * @param cold temperature by the dial, −30…25 °C
   * @param holdHours time in the cold, 0…96 h
   */
  public static Proof inCold(Temperature cold, double holdHours) {
    return inCold(dial(cold), holdHours);
  }

  /**
   * {@return the same in a cold that is better known}
   *
   * @param cold where the loaf waits
   * @param holdHours time in the cold, 0…96 h
   */
  public static Proof inCold(Cold cold, double holdHours) {
    return usual(
        parts -> {
          parts.coldPlace = Optional.of(cold);
          parts.holdHours = holdHours;
        });
  }

  private static Cold dial(Temperature cold) {
    return Cold.byDial(Checks.given("temperature of the cold", cold));
  }

  /**
   * {@return a proof, into a cold of which only the dial is known, after shaping, and to the oven
   * at a fixed hour}
   *
   * @param cold temperature by the dial, −30…25 °C
   * @param ovenHour hours from mixing to the oven, 1…168
   */
  public static Proof inColdUntil(Temperature cold, double ovenHour) {
    return inColdUntil(dial(cold), ovenHour);
  }

  /**
   * {@return the same in a cold that is better known}
   *
   * @param cold where the loaf waits
   * @param ovenHour hours from mixing to the oven, 1…168
   */
  public static Proof inColdUntil(Cold cold, double ovenHour) {
    double hour = Checks.inRange("hours from mixing to the oven", ovenHour, 1, 168, "h");
    return usual(
        parts -> {
          parts.coldPlace = Optional.of(cold);
          parts.ovenHour = OptionalDouble.of(hour);
        });
  }

  /**
   * {@return a proof, in the room after shaping}
   *
   * @param room temperature around the piece, 0…45 °C
   * @param hours length of the proof, 0…48 h
   */
  public static Proof inRoom(Temperature room, double hours) {
    return usual(inRoomFirst(room, hours));
  }

  private static Consumer<Parts> inRoomFirst(Temperature room, double hours) {
    return parts -> {
      parts.room = Optional.of(Checks.given("proof temperature", room));
      parts.roomHours = hours;
    };
  }

  /**
   * {@return the same with a proof in the room before the cold}
   *
   * @param temperature temperature around the piece, 0…45 °C
   * @param hours 0…48 h
   */
  public Proof afterRoom(Temperature temperature, double hours) {
    return with(inRoomFirst(temperature, hours));
  }

  /**
   * {@return the same with another time for dividing, bench rest and shaping}
   *
   * @param hours 0…12 h
   */
  public Proof withRest(double hours) {
    return with(parts -> parts.restHours = hours);
  }

  /**
   * {@return the same in a cold that is better known, or another one}
   *
   * @param cold where the loaf waits
   */
  public Proof withCold(Cold cold) {
    return with(parts -> parts.coldPlace = Optional.of(cold));
  }

  /**
   * {@return the same so long in the cold, whenever that is}
   *
   * @param hours 0…96 h
   */
  public Proof held(double hours) {
    return with(
        parts -> {
          parts.holdHours = hours;
          parts.ovenHour = OptionalDouble.empty();
        });
  }

  /**
   * {@return the same with another piece}
   *
   * @param newMass 20…50000 g
   * @param newForm what it is proofed in
   */
  public Proof withPiece(Mass newMass, PieceForm newForm) {
    return with(
        parts -> {
          parts.mass = newMass;
          parts.form = newForm;
        });
  }

  /**
   * {@return the same, handled otherwise than usual}
   *
   * @param how form and handling
   */
  public Proof shaped(Shaping how) {
    return with(parts -> parts.shaping = Optional.of(how));
  }

  /**
   * {@return the same with another target: the loaf's rise at the oven, over the dough after
   * mixing}
   *
   * @param rise 10…400 %
   */
  public Proof withTarget(Rise rise) {
    Checks.inRange(
        "target rise",
        Checks.given("target rise", rise).percent(),
        LEAST_TARGET_PERCENT,
        MOST_TARGET_PERCENT,
        "%");
    return with(parts -> parts.target = Optional.of(rise));
  }

  /** {@return temperature of the cold as stated, if there is one} */
  public Optional<Temperature> cold() {
    return coldPlace.map(Cold::stated);
  }

  /**
   * {@return how firmly pieces of a flour are handled}
   *
   * @param flour of the dough
   */
  public Shaping shapingOf(Flour flour) {
    return shaping.orElseGet(() -> Shaping.usual(flour, form));
  }

  /**
   * Hours from taking the piece off the bench to the oven; negative where the oven comes before.
   *
   * @param fromHours hour at which shaping is done
   */
  double hoursToOven(double fromHours) {
    return ovenHour.isPresent() ? ovenHour.getAsDouble() - fromHours : roomHours + holdHours;
  }

  private Object writeReplace() {
    return SentRecord.of(this);
  }
}
