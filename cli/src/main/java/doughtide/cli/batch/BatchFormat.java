package doughtide.cli.batch;

/** How the rows of a batch are written down. */
enum BatchFormat {
  /** A header, then one row a line. */
  CSV,
  /** One object a line. */
  JSONL
}
