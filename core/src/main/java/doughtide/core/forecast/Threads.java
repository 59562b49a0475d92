package doughtide.core.forecast;

import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.Stream;

/** Which threads work through an ensemble; the results keep the order of its members. */
enum Threads {
  /** The common pool of the process. */
  ALL_CORES {
    @Override
    <T> Stream<T> stream(List<T> members) {
      return members.parallelStream();
    }

    @Override
    void begin(Runnable work) {
      ForkJoinPool.commonPool().execute(work);
    }
  },
  /** Only the thread that asks. */
  CALLING_THREAD {
    @Override
    <T> Stream<T> stream(List<T> members) {
      return members.stream();
    }

    @Override
    void begin(Runnable work) {
      // the thread that asks does it when it needs it
    }
  };

  abstract <T> Stream<T> stream(List<T> members);

  /** Begins what will be needed soon, where there is a thread for it. */
  abstract void begin(Runnable work);
}
