package doughtide.core.learning;

/** How a loaf came out, as its crumb and its crust tell. */
public enum LoafResult {
  /** It had not risen enough at the oven. */
  UNDER,
  /** As it should. */
  RIGHT,
  /** It had risen too far. */
  OVER
}
