package doughtide.cli.batch;

/**
 * A line of a batch as it came.
 *
 * @param number its line in the input, from 1
 * @param text what stands in it
 * @param problem why it could not be read, empty if it could
 */
record BatchLine(long number, String text, String problem) {
  BatchLine(long number, String text) {
    this(number, text, "");
  }
}
