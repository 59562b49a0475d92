package doughtide.core.day.again;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import doughtide.core.day.BakeRoute;
import doughtide.core.day.BakeStep;
import doughtide.core.day.BakeStep.Kind;
import doughtide.core.day.BenchHours;
import doughtide.core.day.BenchInterval;
import doughtide.core.day.HandsOnTime;
import doughtide.core.day.ProofKind;
import doughtide.core.day.Taken;
import doughtide.core.feeding.FeedChoice;
import doughtide.core.feeding.FeedRatio;
import doughtide.core.quantity.Share;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TubIntoColdTest {
  private static final BenchHours BENCH =
      new BenchHours(
          List.of(
              new BenchInterval(18, 22.5),
              new BenchInterval(30.5, 32.5),
              new BenchInterval(41, 46.5),
              new BenchInterval(54, 56)));

  private static final FeedChoice FEED =
      new FeedChoice(15, 20, FeedRatio.oneTo(1, Share.ofPercent(100)), 4, 6);

  private static BakeStep fold(double hour) {
    return new BakeStep(Kind.FOLD, hour, hour + 1.0 / 12, 1);
  }

  private static Slipped mixed(double nowHour, OptionalDouble shaped) {
    return new Slipped(
        BakeRoute.inRoom(20, 26, 20),
        FEED,
        nowHour,
        shaped,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        3,
        ProofKind.COLD,
        9,
        31,
        List.of(fold(20.75), fold(23)));
  }

  private static List<Slipped> ways(Slipped dough, Taken others) {
    return TubIntoCold.ways(dough, BENCH, others, 1);
  }

  @Test
  void asLateAsSomebodyIsThereOrAtOnceUntilSomebodyIsThereAgain() {
    List<Slipped> ways = ways(mixed(20.5, OptionalDouble.empty()), Taken.NOTHING);

    double last = 22.5 - HandsOnTime.CARRY_HOURS;
    assertThat(ways).hasSize(3);
    assertThat(ways)
        .allSatisfy(
            way ->
                assertThat(way.route().coldFrom().getAsDouble())
                    .satisfiesAnyOf(
                        from -> assertThat(from).isEqualTo(20.5),
                        from -> assertThat(from).isBetween(last - 1.0 / 12, last)));
    assertThat(ways.stream().map(way -> way.route().coldTo().getAsDouble()))
        .containsExactly(30.5, 41.0, 30.5);
  }

  @Test
  void foldsBeforeItStayAndInTheColdNobodyFolds() {
    List<Slipped> ways = ways(mixed(20.5, OptionalDouble.empty()), Taken.NOTHING);

    assertThat(ways.get(2).open()).extracting(BakeStep::kind).doesNotContain(Kind.FOLD);
    assertThat(ways.get(0).open())
        .extracting(BakeStep::kind)
        .containsExactly(Kind.FOLD, Kind.BULK_INTO_COLD, Kind.BULK_OUT_OF_COLD);
  }

  @Test
  void handsThatAreTakenAreNotThere() {
    Slipped dough = mixed(20.5, OptionalDouble.empty());

    List<Slipped> later = ways(dough, shaping(20.5));
    assertThat(later.get(later.size() - 1).route().coldFrom().getAsDouble()).isBetween(21.0, 21.1);
    assertThat(ways(dough, shaping(30.5)).stream().map(way -> way.route().coldTo().getAsDouble()))
        .containsExactly(41.0);
  }

  private static Taken shaping(double hour) {
    return Taken.NOTHING.with(List.of(new BakeStep(Kind.SHAPE, hour, hour + 0.5, 0)));
  }

  @Test
  void whatIsShapedStaysWhereItIs() {
    assertThat(ways(mixed(21, OptionalDouble.of(20.9)), Taken.NOTHING)).isEmpty();
  }

  @Test
  void aTubThatIsStillToGoThereMayGoAtAnyHourUntilTheBakerGoesOrNotAtAll() {
    List<BakeStep> open =
        List.of(fold(20.75), carry(Kind.BULK_INTO_COLD, 22), carry(Kind.BULK_OUT_OF_COLD, 30.5));
    Slipped meant = mixed(20.5, OptionalDouble.empty()).with(open);

    List<Slipped> ways = ways(meant, Taken.NOTHING);

    assertThat(ways.get(0).route().coldFrom()).isEmpty();
    assertThat(ways.get(0).open()).containsExactly(fold(20.75));
    List<Double> into =
        ways.stream().skip(1).map(way -> way.route().coldFrom().getAsDouble()).distinct().toList();
    assertThat(into).hasSize(3);
    assertThat(into.get(0)).as("the last moment").isBetween(22.3, 22.5);
    assertThat(into.get(1)).isCloseTo(21.5, within(1e-9));
    assertThat(into.get(2)).isEqualTo(20.5);
  }

  @Test
  void aTubThatIsInTheColdStaysThere() {
    Slipped meant = mixed(20.5, OptionalDouble.empty());
    Slipped inCold = meant.with(List.of(carry(Kind.BULK_INTO_COLD, 20))).with(List.of());

    assertThat(ways(inCold, Taken.NOTHING)).isEmpty();
  }

  private static BakeStep carry(Kind kind, double hour) {
    return new BakeStep(kind, hour, hour + HandsOnTime.CARRY_HOURS, 0);
  }
}
