package doughtide.cli.batch;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Works on a stream with several threads and hands the results on in the order of the stream.
 * Memory is bounded: no more is read than a few pieces a thread ahead.
 */
final class InOrder {

  private static final int AHEAD = 16;

  private final int threads;

  public InOrder(int threads) {
    this.threads = threads;
  }

  /** Takes a result. */
  public interface Sink<R> {
    void accept(R result) throws IOException;
  }

  /**
   * Works through the stream.
   *
   * @param source the next piece, or nothing at the end; called by this thread only
   * @param work called by many threads at once
   * @param sink called by this thread only
   */
  public <T, R> void run(Supplier<Optional<T>> source, Function<T, R> work, Sink<R> sink)
      throws IOException {
    ExecutorService pool = Executors.newFixedThreadPool(threads, InOrder::daemon);
    try {
      Deque<Future<R>> running = new ArrayDeque<>();
      for (Optional<T> next = source.get(); next.isPresent(); next = source.get()) {
        T piece = next.orElseThrow();
        running.add(pool.submit(() -> work.apply(piece)));
        if (running.size() >= AHEAD * threads) {
          sink.accept(result(running.remove()));
        }
      }
      while (!running.isEmpty()) {
        sink.accept(result(running.remove()));
      }
    } finally {
      pool.shutdownNow();
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "batch");
    thread.setDaemon(true);
    return thread;
  }

  private static <R> R result(Future<R> future) {
    try {
      return future.get();
    } catch (ExecutionException e) {
      if (e.getCause() instanceof Error error) {
        throw error;
      }
      throw new IllegalStateException(e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }
}
