package doughtide.report.phone;

import doughtide.core.Internal;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.loaf.Proof;
import doughtide.core.loaf.ShapeForecast;
import doughtide.core.loaf.ShapeForecaster;
import doughtide.core.quantity.Rise;
import doughtide.report.words.Words;
import java.util.List;
import java.util.Optional;

/**
 * A dough with one thing or two changed, as a page to try out what that does.
 *
 * @param name as printed; anything, it stays text
 * @param axes what is changed, one or two
 * @param doughs one for each choice of values, the values of the last axis changing fastest; hours
 *     must be possible
 * @param rises whose times are shown, ascending
 * @param asked the rise that the page tells of where no loaf is planned
 * @param loaf what comes after bulk fermentation, if that was asked
 * @hidden
 */
@Internal
public record PhoneLesson(
    String name,
    List<Axis> axes,
    List<RiseForecast> doughs,
    List<Rise> rises,
    Rise asked,
    Optional<Loaf> loaf) {

  /** Copies the lists. */
  public PhoneLesson {
    axes = List.copyOf(axes);
    doughs = List.copyOf(doughs);
    rises = List.copyOf(rises);
  }

  /**
   * After bulk fermentation.
   *
   * @param proof the same of every dough
   * @param shapes when to shape each dough for it, in their order
   * @hidden
   */
  @Internal
  public record Loaf(Proof proof, List<ShapeForecast> shapes) {
    /** Copies the list. */
    public Loaf {
      shapes = List.copyOf(shapes);
    }

    /** Of doughs in their order. */
    public static Loaf of(Proof proof, List<RiseForecast> doughs) {
      return new Loaf(
          proof,
          doughs.parallelStream().map(each -> ShapeForecaster.of(each, proof).forecast()).toList());
    }
  }

  /**
   * What can be changed.
   *
   * @hidden
   */
  @Internal
  public enum Thing {
    /** The dough's own temperature. */
    DOUGH_TEMP,
    /** Starter over the flour added. */
    STARTER,
    /** Flour in the starter over all flour. */
    PREFERMENTED,
    /** All water over all flour. */
    HYDRATION,
    /** All flour. */
    FLOUR
  }

  /**
   * One thing that is changed.
   *
   * @param thing what
   * @param given which of its values, from 0, the dough has as it was given
   * @param count how many values it has
   * @hidden
   */
  @Internal
  public record Axis(Thing thing, int given, int count) {}

  /** What a lesson without a name is called. */
  public static String usualName(Words words) {
    return words.say("phone.lesson.title");
  }

  /** The number of the dough as it was given. */
  int given() {
    int given = 0;
    for (Axis axis : axes) {
      given = given * axis.count() + axis.given();
    }
    return given;
  }

  /** How many doughs lie between two neighbouring values of an axis. */
  int stride(int axis) {
    int stride = 1;
    for (Axis later : axes.subList(axis + 1, axes.size())) {
      stride *= later.count();
    }
    return stride;
  }

  /** The dough with another value of an axis, otherwise as given. */
  RiseForecast with(int axis, int value) {
    return doughs.get(given() + (value - axes.get(axis).given()) * stride(axis));
  }
}
