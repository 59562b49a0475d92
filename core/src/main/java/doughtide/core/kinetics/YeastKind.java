package doughtide.core.kinetics;

import doughtide.core.Internal;

/**
 * The two kinds of yeast that rule sourdoughs. They grow alike at 25 °C and part ways in the warm:
 * one is fastest near 28 °C and stops at 35, the other is fastest near 32 to 34 °C.
 */
@Internal
public enum YeastKind {
  /** <em>Kazachstania humilis</em> (<em>Candida milleri</em>) and the like. */
  HUMILIS("humilis"),
  /** <em>Saccharomyces cerevisiae</em> and the like. */
  CEREVISIAE("cerevisiae");

  private final String key;

  YeastKind(String key) {
    this.key = key;
  }

  /** As it stands before the stroke in the key of a pair of rate curves. */
  public String key() {
    return key;
  }
}
