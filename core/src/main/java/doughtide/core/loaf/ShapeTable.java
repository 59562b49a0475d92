package doughtide.core.loaf;

import doughtide.core.Internal;
import doughtide.core.forecast.Distribution;
import doughtide.core.forecast.RiseForecast;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.Checks;
import doughtide.core.quantity.InnerFault;
import doughtide.core.rise.RiseCurve;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.BiConsumer;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What becomes of a loaf, kept as a table, for a dough whose members change their weights only: of
 * each member when it is shaped, and, when first asked for, its rise at the oven over the end of
 * bulk fermentation. Worked out once with the loaf model; afterwards an answer is a look into the
 * table. From two hours before a member's shape point to an hour and a half after it the table is
 * within two points of rise of the model (a property test holds it there); farther away it is
 * rougher. Immutable.
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
  private static final int ALL_UP_TO = 4096;
  private static final int ALIKE = 256; // doughs that stand for all where some are followed

  private final ShapeForecaster shape;
  private final RiseForecast bulk;
  private final MemberShape[] shapes; // by member; null where not worked out
  private final int[] members; // in the order of their hours, so that to sort them costs little
  private final List<MemberShape> ordered;
  private final Map<Integer, CurveThrough> percents; // of a member when first asked for

  private ShapeTable(
      ShapeForecaster shape,
      RiseForecast bulk,
      MemberShape[] shapes,
      Map<Integer, CurveThrough> percents) {
    this.shape = shape;
    this.bulk = bulk;
    this.shapes = shapes;
    this.members =
        IntStream.range(0, shapes.length)
            .filter(member -> shapes[member] != null)
            .boxed()
            .sorted(Comparator.comparingDouble(member -> shapes[member].hours()))
            .mapToInt(member -> member)
            .toArray();
    this.ordered = Arrays.stream(members).mapToObj(member -> shapes[member]).toList();
    this.percents = percents;
  }

  /**
   * Works out for the members that carry the weight when they are shaped.
   *
   * @param bulk the dough, forecast as if bulk fermentation went on
   * @param proof what happens after
   */
  public static ShapeTable of(RiseForecast bulk, Proof proof) {
    ShapeForecaster shape = ShapeForecaster.of(bulk, proof).with(LoafSettings.SEARCH);
    MemberShape[] none = new MemberShape[bulk.ensemble().size()];
    return new ShapeTable(shape, bulk, none, new ConcurrentHashMap<>()).covering(bulk);
  }

  /**
   * Runs a dough again with the members of another forecaster, and works out of each run, while it
   * lasts, when it is shaped: so each is run once.
   *
   * @param dough what is in it, its temperature and how far it is run
   * @param members how many are run, and which
   * @param proof what happens after
   */
  public static ShapeTable ofAll(RiseForecast dough, RiseForecaster members, Proof proof) {
    ShapeForecaster one = ShapeForecaster.of(dough, proof).with(LoafSettings.SEARCH);
    MemberShape[] shapes = new MemberShape[members.ensemble().size()];
    BiConsumer<Integer, RiseCurve> shaped =
        (member, curve) -> shapes[member] = one.ofMember(member, curve);
    RiseForecast bulk =
        members.forecast(
            dough.formula(),
            dough.temperature(),
            dough.hours(),
            one.isForbidden() ? (member, curve) -> {} : shaped);
    ShapeForecaster shape = ShapeForecaster.of(bulk, proof).with(LoafSettings.SEARCH);
    return new ShapeTable(shape, bulk, shapes, new ConcurrentHashMap<>());
  }

  /** The dough, forecast as if bulk fermentation went on. */
  public RiseForecast bulk() {
    return bulk;
  }

  /** The same without the loaves that were worked out, for whoever asks it for hours only. */
  public ShapeTable ofHours() {
    return new ShapeTable(shape, bulk, shapes, new ConcurrentHashMap<>());
  }

  /**
   * The table with every member that carries weight now; the same one if it has them.
   *
   * @param weighted the same members with other weights
   */
  public ShapeTable covering(RiseForecast weighted) {
    boolean isWhole = members.length == weighted.ensemble().size();
    return shape.isForbidden() || isWhole ? this : with(heaviest(weighted.ensemble().weights()));
  }

  private ShapeTable with(Stream<Integer> wanted) {
    List<Integer> missing = wanted.filter(each -> shapes[each] == null).distinct().toList();
    if (missing.isEmpty()) {
      return this;
    }
    MemberShape[] all = shapes.clone();
    List<MemberShape> found = bulk.ofMembers(missing, shape::ofMember);
    for (int i = 0; i < found.size(); i++) {
      all[missing.get(i)] = found.get(i);
    }
    return new ShapeTable(shape, bulk, all, percents);
  }

  /** All of some thousand; of more the fewest that have nearly all of the weight. */
  private static Stream<Integer> heaviest(double[] weights) {
    if (weights.length <= ALL_UP_TO) {
      return IntStream.range(0, weights.length).boxed();
    }
    List<Integer> order =
        IntStream.range(0, weights.length)
            .boxed()
            .sorted(Comparator.comparingDouble(member -> -weights[member]))
            .toList();
    double wanted = COVERED * Arrays.stream(weights).sum();
    double sum = 0;
    int count = 0;
    while (count < order.size() && sum < wanted) {
      sum += weights[order.get(count++)];
    }
    return order.stream().limit(count);
  }

  private CurveThrough percents(int member, RiseCurve curve) {
    MemberShape at = shapeOf(member);
    double last = shape.lastBulkEnd(curve);
    double[] ends =
        DoubleStream.concat(DoubleStream.of(0, last), around(at, last))
            .filter(end -> end >= 0 && end <= last)
            .sorted()
            .distinct()
            .toArray();
    return new CurveThrough(
        ends, Arrays.stream(ends).map(end -> shape.ovenPercent(member, curve, end)).toArray());
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
    return shape.isForbidden() ? ShapeForecaster.Point.NONE : known(weighted).point(weighted);
  }

  private MemberShapes known(RiseForecast weighted) {
    return new MemberShapes(ordered, weights(weighted));
  }

  /**
   * When to shape, by the weights of now, and what becomes of the loaf until the oven, told by some
   * doughs that count alike.
   *
   * @param weighted the same members with other weights
   */
  public ShapeForecast forecast(RiseForecast weighted) {
    if (shape.isForbidden()) {
      return ShapeForecaster.of(weighted, proof()).forecast();
    }
    int[] places = weighted.placesDrawn(ALIKE);
    RiseForecast alike = weighted.drawn(ALIKE, weighted.hours());
    return ShapeForecaster.of(alike, proof()).forecast(known(weighted), weighted, hoursOf(places));
  }

  /**
   * When members are shaped, hours from mixing; infinite for never. Those that carry no weight are
   * worked out now.
   *
   * @param places in the ensemble
   */
  public double[] hoursOf(int[] places) {
    ShapeTable all = with(Arrays.stream(places).boxed());
    return Arrays.stream(places).mapToDouble(each -> all.shapeOf(each).hours()).toArray();
  }

  /**
   * The rise of the loaf at the oven if bulk fermentation of all members ends at one hour, percent.
   * The loaves are worked out when this is first asked.
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
    return Distribution.of(
        loaves().stream().mapToDouble(each -> each.at(bulkEndHours)).toArray(), weights(weighted));
  }

  private List<CurveThrough> loaves() {
    List<Integer> missing =
        Arrays.stream(members).boxed().filter(each -> !percents.containsKey(each)).toList();
    List<CurveThrough> found = bulk.ofMembers(missing, this::percents);
    for (int i = 0; i < found.size(); i++) {
      percents.put(missing.get(i), found.get(i));
    }
    return Arrays.stream(members).mapToObj(percents::get).toList();
  }

  private MemberShape shapeOf(int member) {
    MemberShape known = shapes[member];
    if (known == null) {
      throw new InnerFault("the table does not have a member that it was asked of");
    }
    return known;
  }

  private double[] weights(RiseForecast weighted) {
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
    return "table of " + members.length + " loaves";
  }
}
