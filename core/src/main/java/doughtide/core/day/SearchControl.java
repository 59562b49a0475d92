package doughtide.core.day;

import doughtide.core.Internal;
import doughtide.core.quantity.Checks;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.function.BooleanSupplier;
import java.util.function.Function;

/**
 * How a search for plans runs: who is told how far it has come, when it stops early, and on which
 * threads it works. A search also stops when the thread that began it is interrupted; a stopped
 * search gives the best it has found so far. Immutable.
 *
 * <pre>{@code
 * long end = System.nanoTime() + 3_000_000_000L;
 * SearchControl control = SearchControl.none().stoppingWhen(() -> System.nanoTime() > end);
 * DayAnswer answer = DayPlanner.plan(List.of(day), 1, control);
 * }</pre>
 */
public final class SearchControl {
  private final SearchProgress progress;
  private final BooleanSupplier stop;
  private final Optional<Executor> executor;
  private final boolean looksForChange;
  private final double changesFromHour;

  private SearchControl(
      SearchProgress progress,
      BooleanSupplier stop,
      Optional<Executor> executor,
      boolean looksForChange,
      double changesFromHour) {
    this.progress = progress;
    this.stop = stop;
    this.executor = executor;
    this.looksForChange = looksForChange;
    this.changesFromHour = changesFromHour;
  }

  /**
   * Tells nobody, has no limit, works on the threads that the virtual machine shares.
   *
   * @return a control that tells nobody and never stops
   */
  public static SearchControl none() {
    return new SearchControl(
        SearchProgress.none(), () -> false, Optional.empty(), true, Double.NEGATIVE_INFINITY);
  }

  /**
   * Tells somebody how far the search has come.
   *
   * @param told is told from the thread that searches
   * @return the same, telling somebody how far the search has come
   */
  public SearchControl withProgress(SearchProgress told) {
    return new SearchControl(
        Checks.given("progress", told), stop, executor, looksForChange, changesFromHour);
  }

  /**
   * Stops as soon as a condition holds.
   *
   * @param condition asked often and from several threads, for example whether a time has passed
   * @return the same, stopping as soon as the condition holds
   */
  public SearchControl stoppingWhen(BooleanSupplier condition) {
    BooleanSupplier before = stop;
    Checks.given("condition", condition);
    return new SearchControl(
        progress,
        () -> before.getAsBoolean() || condition.getAsBoolean(),
        executor,
        looksForChange,
        changesFromHour);
  }

  /**
   * Works on the threads of an executor.
   *
   * @param threads what runs the parts of the search
   * @return the same, working on the threads of an executor
   */
  public SearchControl on(Executor threads) {
    return new SearchControl(progress, stop, Optional.of(threads), looksForChange, changesFromHour);
  }

  /**
   * {@return the same for whoever asks for plans alone: where a day has none, no change is looked
   * for that makes one, which takes longest}
   *
   * @hidden
   */
  @Internal
  public SearchControl withoutChange() {
    return new SearchControl(progress, stop, executor, false, changesFromHour);
  }

  /**
   * {@return the same where hours before one have passed: a change that makes a plan possible asks
   * for none of them}
   *
   * @param hour on the axis of the day
   * @hidden
   */
  @Internal
  public SearchControl changingFrom(double hour) {
    return new SearchControl(progress, stop, executor, looksForChange, hour);
  }

  double changesFromHour() {
    return changesFromHour;
  }

  boolean looksForChange() {
    return looksForChange;
  }

  /** Stops when a thread is interrupted, too. */
  SearchControl interruptedWith(Thread caller) {
    return stoppingWhen(caller::isInterrupted);
  }

  /** The same for a search within another: tells nobody. */
  SearchControl silently() {
    return new SearchControl(
        SearchProgress.none(), stop, executor, looksForChange, changesFromHour);
  }

  /** Whether to come to an end. */
  boolean stopped() {
    return stop.getAsBoolean();
  }

  void at(double share) {
    progress.at(share);
  }

  /** Works on all items at once and keeps their order. */
  <T, R> List<R> map(List<T> items, Function<T, R> work) {
    if (executor.isEmpty()) {
      return items.parallelStream().map(work).toList();
    }
    List<CompletableFuture<R>> running =
        items.stream()
            .map(item -> CompletableFuture.supplyAsync(() -> work.apply(item), executor.get()))
            .toList();
    return running.stream().map(SearchControl::result).toList();
  }

  /**
   * The same where the work on an item works on several itself, or is within such work: on an
   * executor one item after the other, because all its threads might wait for each other.
   */
  <T, R> List<R> mapLarge(List<T> items, Function<T, R> work) {
    return (executor.isEmpty() ? items.parallelStream() : items.stream()).map(work).toList();
  }

  private static <R> R result(CompletableFuture<R> running) {
    try {
      return running.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof RuntimeException cause) {
        throw cause;
      }
      throw e;
    }
  }
}
