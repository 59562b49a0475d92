package doughtide.cli.hand;

/** What to be careful with, as the answers say it. */
public final class Cautions {

  /** At the dough. */
  public static final String RAW = "raw flour and raw dough are not for eating.";

  /** At the oven as well. */
  public static final String OVEN =
      "raw flour and raw dough are not for eating; hot ovens, pots and steam burn.";

  private Cautions() {}
}
