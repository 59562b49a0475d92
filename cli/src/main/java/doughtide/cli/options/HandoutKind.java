package doughtide.cli.options;

import doughtide.cli.args.Arguments;

/** The kinds of pages. A new kind is one line here and one case in {@code HandoutPages}. */
public enum HandoutKind {
  BAKE_SHEET("one dough: chart, the steps of its day, room for own readings"),
  COMPARISON("one dough with one thing changed, and the idea in numbers"),
  HOURS_TABLE("hours by dough temperature and starter share, for the wall"),
  WHY_IT_RISES("gas, yeast and bacteria, pH and strength in one dough"),
  BOWL_WORKSHEET("the bowls of a flour trial, to be graded"),
  READINGS_LOG("to write readings on, in the words learn reads"),
  STARTER_PAGE("when a starter is ripe, by feed and temperature"),
  FIRST_EVENING("jars fed side by side, from which learn knows your starter"),
  JAR_STRIP("a strip in true mm for the sample jar: look, shape, too late"),
  HAND_SHEET("squared paper with the expected rise, to plot readings on"),
  CLASS_PAGES("exercise, answers, wall page, log; --roster: a page a student");

  private final String summary;

  HandoutKind(String summary) {
    this.summary = summary;
  }

  /** What it is, for help. */
  public String summary() {
    return summary;
  }

  /** As typed. */
  public String typed() {
    return Arguments.word(this).replace(' ', '-');
  }
}
