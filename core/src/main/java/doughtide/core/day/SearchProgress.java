package doughtide.core.day;

/** Is told how far a search has come; called from several threads. */
@FunctionalInterface
public interface SearchProgress {
  /**
   * @param share 0…1
   */
  void at(double share);

  /**
   * Tells nobody.
   *
   * @return a listener that does nothing
   */
  static SearchProgress none() {
    return share -> {};
  }
}
