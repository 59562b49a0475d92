package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InnerFault;
import doughtide.core.rise.RiseCurve;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What becomes of a loaf, kept as a table, for a dough whose members change their weights only: of
 * each member when it is shaped, and its rise at the oven over the end of bulk fermentation. Worked
 * out once with the loaf model; afterwards an answer is a look into the table. From two hours
 * before a member's shape point to an hour and a half after it the table is within two points of
 * rise of the model (a property test holds it there); farther away it is rougher. Immutable.
 *
 * <pre>{@code
 * ShapeTable table = ShapeTable.of(forecast, Proof.inCold(Temperature.ofCelsius(4), 12));
 * ShapeForecaster.Point now = table.point(forecast.weighted(weights));
 * }</pre>
 */
@Internal
public final class ShapeTable {
  private static final double[] AROUND_HOURS = {-2, -1, 0, 0.5, 1, 1.5, 2};
  private static final int EVENLY = 8; // rows of a member without a shape point
  private static final double COVERED = 0.99; // share of the weight
  private static final int ALL_UP_TO = 2048;

  private final ShapeForecaster shape;
  private final RiseForecast bulk;
  private final Map<Integer, Row> rows;

  private ShapeTable(ShapeForecaster shape, RiseForecast bulk, Map<Integer, Row> rows) {
    this.shape = shape;
    this.bulk = bulk;
    this.rows = rows;
  }

  /**
   * One member.
   *
   * @param percents rise at the oven over the end of bulk fermentation
   */
  private record Row(MemberShape shape, CurveThrough percents) {}

  /**
   * Works the table out for the members that carry the weight.
   *
   * @param bulk the dough, forecast as if bulk fermentation went on
   * @param proof what happens after
   */
  public static ShapeTable of(RiseForecast bulk, Proof proof) {
    ShapeForecaster shape = ShapeForecaster.of(bulk, proof).with(LoafSettings.SEARCH);
    return new ShapeTable(shape, bulk, Map.of()).covering(bulk);
  }

  /**
   * The table with rows for every member that carries weight now; the same one if it has them.
   *
   * @param weighted the same members with other weights
   */
  public ShapeTable covering(RiseForecast weighted) {
    if (shape.isForbidden()) {
      return this;
    }
    List<Integer> missing =
        heaviest(weighted.ensemble().weights()).filter(each -> !rows.containsKey(each)).toList();
    if (missing.isEmpty()) {
      return this;
    }
    Map<Integer, Row> all = new HashMap<>(rows);
    List<Row> found = bulk.ofMembers(missing, this::row);
    for (int i = 0; i < found.size(); i++) {
      all.put(missing.get(i), found.get(i));
    }
    return new ShapeTable(shape, bulk, all);
  }

  /** All of some thousand; of more the fewest that have nearly all of the weight. */
  private static Stream<Integer> heaviest(double[] weights) {
    List<Integer> order =
        IntStream.range(0, weights.length)
            .boxed()
            .sorted(Comparator.comparingDouble(member -> -weights[member]))
            .toList();
    if (weights.length <= ALL_UP_TO) {
      return order.stream();
    }
    double wanted = COVERED * Arrays.stream(weights).sum();
    double sum = 0;
    int count = 0;
    while (count < order.size() && sum < wanted) {
      sum += weights[order.get(count++)];
    }
    return order.stream().limit(count);
  }

  private Row row(int member, RiseCurve curve) {
    MemberShape at = shape.ofMember(member, curve);
    double last = shape.lastBulkEnd(curve);
    double[] ends =
        DoubleStream.concat(DoubleStream.of(0, last), around(at, last))
            .filter(end -> end >= 0 && end <= last)
            .sorted()
            .distinct()
            .toArray();
    double[] percents =
        Arrays.stream(ends).map(end -> shape.ovenPercent(member, curve, end)).toArray();
    return new Row(at, new CurveThrough(ends, percents));
  }

  private static DoubleStream around(MemberShape at, double last) {
    return at.isFound()
        ? Arrays.stream(AROUND_HOURS).map(hours -> at.hours() + hours)
        : IntStream.range(1, EVENLY).mapToDouble(i -> last * i / EVENLY);
  }

  /**
   * When to shape, by the weights of now.
   *
   * @param weighted the same members with other weights
   * @return empty windows where there is no such hour
   */
  public ShapeForecaster.Point point(RiseForecast weighted) {
    if (shape.isForbidden()) {
      return ShapeForecaster.Point.NONE;
    }
    int[] members = members();
    List<MemberShape> shapes = Arrays.stream(members).mapToObj(i -> row(i).shape()).toList();
    return new MemberShapes(shapes, weights(members, weighted)).point(weighted);
  }

  /**
   * The rise of the loaf at the oven if bulk fermentation of all members ends at one hour, percent.
   *
   * @param weighted the same members with other weights
   * @param bulkEndHours 0 to the end of the forecast
   * @return never where no hours can be given
   */
  public Distribution ovenPercent(RiseForecast weighted, double bulkEndHours) {
    Checks.inside("end of bulk fermentation", bulkEndHours, 0, bulk.hours(), "h");
    if (shape.isForbidden()) {
      return Distribution.NEVER;
    }
    int[] members = members();
    return Distribution.of(
        Arrays.stream(members).mapToDouble(i -> row(i).percents().at(bulkEndHours)).toArray(),
        weights(members, weighted));
  }

  private Row row(int member) {
    Row row = rows.get(member);
    if (row == null) {
      throw new InnerFault("the table has no row for a member that it was asked of");
    }
    return row;
  }

  private int[] members() {
    return rows.keySet().stream().mapToInt(each -> each).sorted().toArray();
  }

  private static double[] weights(int[] members, RiseForecast weighted) {
    double[] all = weighted.ensemble().weights();
    return Arrays.stream(members).mapToDouble(member -> all[member]).toArray();
  }

  /** What happens after bulk fermentation. */
  public Proof proof() {
    return shape.proof();
  }

  /** In a line, for logs: how many members it covers. */
  @Override
  public String toString() {
    return "table of " + rows.size() + " loaves";
  }
}
