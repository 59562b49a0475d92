package doughtide.core.learning;

/** The likeliest reason why a reading can hardly be of this dough. */
public enum ReadingDoubt {
  /** It fits a whole hour, or twelve, earlier or later. */
  CLOCK_WRONG,
  /** The mark of the start height has moved, or the jar was disturbed. */
  MARK_MOVED,
  /** No slip explains it: another jar, or a dough that is not what was written down. */
  OTHER_DOUGH
}
