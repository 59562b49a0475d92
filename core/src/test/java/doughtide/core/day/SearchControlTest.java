package doughtide.core.day;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SearchControlTest {
  private static final List<Integer> ITEMS = IntStream.range(0, 40).boxed().toList();
  private static final List<Integer> SQUARES = ITEMS.stream().map(i -> i * i).toList();

  @Test
  void aSearchStopsWhenAnyConditionHolds() {
    AtomicBoolean first = new AtomicBoolean();
    AtomicBoolean second = new AtomicBoolean();
    SearchControl control = SearchControl.none().stoppingWhen(first::get).stoppingWhen(second::get);

    assertThat(SearchControl.none().stopped()).isFalse();
    assertThat(control.stopped()).isFalse();
    second.set(true);
    assertThat(control.stopped()).isTrue();
    assertThat(control.silently().withoutChange().on(Runnable::run).stopped()).isTrue();
    second.set(false);
    first.set(true);
    assertThat(control.stopped()).isTrue();
  }

  @Test
  void aSearchStopsWhenItsThreadIsInterrupted() {
    SearchControl control = SearchControl.none().interruptedWith(Thread.currentThread());

    assertThat(control.stopped()).isFalse();
    Thread.currentThread().interrupt();
    assertThat(control.stopped()).isTrue();
    assertThat(Thread.interrupted()).isTrue();
  }

  @Test
  void whoAsksForPlansAloneIsLookedForNoChange() {
    assertThat(SearchControl.none().looksForChange()).isTrue();
    SearchControl alone = SearchControl.none().withoutChange();
    assertThat(alone.looksForChange()).isFalse();
    assertThat(alone.silently().on(Runnable::run).stoppingWhen(() -> true).looksForChange())
        .isFalse();
  }

  @Test
  void whatHasPassedStaysPassed() {
    assertThat(SearchControl.none().changesFromHour()).isEqualTo(Double.NEGATIVE_INFINITY);
    SearchControl now = SearchControl.none().changingFrom(19.5);
    assertThat(now.changesFromHour()).isEqualTo(19.5);
    assertThat(now.silently().on(Runnable::run).stoppingWhen(() -> true).changesFromHour())
        .isEqualTo(19.5);
  }

  @Test
  void progressIsToldButNotByASearchWithin() {
    List<Double> told = new ArrayList<>();
    SearchControl control = SearchControl.none().withProgress(told::add);

    control.at(0.25);
    control.silently().at(0.5);
    control.withoutChange().at(0.75);
    assertThat(told).containsExactly(0.25, 0.75);
  }

  @Test
  void workKeepsItsOrderOnAnyThreads() {
    ExecutorService threads = Executors.newFixedThreadPool(2);
    try {
      for (SearchControl control :
          List.of(SearchControl.none(), SearchControl.none().on(threads))) {
        assertThat(control.map(ITEMS, i -> i * i)).isEqualTo(SQUARES);
        assertThat(control.mapLarge(ITEMS, i -> i * i)).isEqualTo(SQUARES);
      }
      SearchControl own = SearchControl.none().on(threads);
      assertThat(own.map(ITEMS, i -> Thread.currentThread()))
          .doesNotContain(Thread.currentThread());
      assertThat(own.mapLarge(ITEMS, i -> Thread.currentThread()))
          .as("work within work waits for no other thread")
          .containsOnly(Thread.currentThread());
    } finally {
      threads.shutdown();
    }
  }

  /** What goes wrong in a part of the work is told as it is. */
  @Test
  void aFaultOfAPartIsTheFaultOfAll() {
    List<Integer> done = Collections.synchronizedList(new ArrayList<>());
    SearchControl control = SearchControl.none().on(Runnable::run);
    assertThatThrownBy(
            () ->
                control.map(
                    ITEMS,
                    i -> {
                      done.add(i);
                      if (i == 3) {
                        throw new IllegalStateException("three");
                      }
                      return i;
                    }))
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("three");
    assertThat(done).contains(3);
    assertThatThrownBy(
            () ->
                control.map(
                    ITEMS,
                    i -> {
                      throw new StackOverflowError();
                    }))
        .hasCauseInstanceOf(StackOverflowError.class);
  }
}
