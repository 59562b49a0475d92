package doughtide.core.forecast;

import java.util.List;
import java.util.stream.Stream;

/** Which threads work through an ensemble; the results keep the order of its members. */
enum Threads {
  /** The common pool of the process. */
  ALL_CORES {
    @Override
    <T> Stream<T> stream(List<T> members) {
      return members.parallelStream();
    }
  },
  /** Only the thread that asks. */
  CALLING_THREAD {
    @Override
    <T> Stream<T> stream(List<T> members) {
      return members.stream();
    }
  };

  abstract <T> Stream<T> stream(List<T> members);
}
