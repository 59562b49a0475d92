package doughtide.core.forecast;

import java.util.List;
import java.util.stream.Stream;

/** Who works through the members of an ensemble; the order of results is that of the members. */
enum Crew {
  /** The common pool of the process. */
  ALL_CORES {
    @Override
    <T> Stream<T> stream(List<T> members) {
      return members.parallelStream();
    }
  },
  /** Nobody but the thread that asks. */
  CALLING_THREAD {
    @Override
    <T> Stream<T> stream(List<T> members) {
      return members.stream();
    }
  };

  abstract <T> Stream<T> stream(List<T> members);
}
