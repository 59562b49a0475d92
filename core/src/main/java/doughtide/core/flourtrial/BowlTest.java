package doughtide.core.flourtrial;

import doughtide.core.Internal;
import doughtide.core.dough.Flour;
import doughtide.core.quantity.Share;

/** What a bowl is asked to do when it is judged (common practice, no source). */
@Internal
public enum BowlTest {
  /** A piece is pulled to a window: for dough that gluten holds together. */
  WINDOW(60, 80),
  /** A heap is pressed with a wet spoon: for rye and what else has little gluten. */
  PASTE(80, 100);

  private static final double LEAST_GLUTEN = 0.5; // as folds: rye above half (starting value)

  private final double driestPercent;
  private final double wettestPercent;

  BowlTest(double driestPercent, double wettestPercent) {
    this.driestPercent = driestPercent;
    this.wettestPercent = wettestPercent;
  }

  /** The one that suits a flour. */
  public static BowlTest of(Flour flour) {
    return flour.gluten() < LEAST_GLUTEN ? PASTE : WINDOW;
  }

  /** Usual hydration of the driest bowl: 60 %, with little gluten 80 %. */
  public Share driest() {
    return Share.ofPercent(driestPercent);
  }

  /** Usual hydration of the wettest bowl: 80 %, with little gluten 100 %. */
  public Share wettest() {
    return Share.ofPercent(wettestPercent);
  }
}
