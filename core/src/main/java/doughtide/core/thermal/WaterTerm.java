package doughtide.core.thermal;

/**
 * One reason why the water is not at the dough's wanted temperature, in the heat balance and in the
 * factor rule.
 *
 * @param kind the reason
 * @param balanceKelvin what it adds to the water's temperature in the heat balance, K
 * @param ruleKelvin what it adds in the factor rule, K; 0 where the rule leaves it out
 */
public record WaterTerm(Kind kind, double balanceKelvin, double ruleKelvin) {
  /** The reasons. */
  public enum Kind {
    /** Flour: the rule counts it as heavy as the water; it holds about half as much heat. */
    FLOUR("the rule counts the flour as heavy as the water"),
    /** Starter: the rule counts it as heavy as the water, or leaves it out. */
    STARTER("the rule counts the starter as heavy as the water, or leaves it out"),
    /** Room: the balance leaves it out, the rule has it stand for bowl and air. */
    ROOM("the rule has the room stand for bowl and air, the balance leaves it out"),
    /** Salt: left out of the rule. */
    SALT("the rule leaves the salt out"),
    /** Bowl: left out of the rule. */
    BOWL("the rule leaves the bowl out"),
    /** Heat of wetting: left out of the rule. */
    WETTING("the rule leaves out the heat that flour sets free when it is wetted"),
    /** Mixing: as the friction factor stands for it. */
    MIXING("the rule has a friction factor or warming stand for the work of mixing");

    private final String explanation;

    Kind(String explanation) {
      this.explanation = explanation;
    }

    /** One line for a reader. */
    public String explanation() {
      return explanation;
    }
  }

  /** Rule less balance, K. */
  public double differenceKelvin() {
    return ruleKelvin - balanceKelvin;
  }
}
