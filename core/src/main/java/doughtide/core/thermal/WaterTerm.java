package doughtide.core.thermal;

import doughtide.core.Internal;
import java.io.Serializable;

/**
 * One reason why the water is not at the dough's wanted temperature, in the heat balance and in the
 * factor rule.
 *
 * @param kind the reason
 * @param balanceKelvin what it adds to the water's temperature in the heat balance, K
 * @param ruleKelvin what it adds in the factor rule, K; 0 where the rule leaves it out
 */
@Internal
public record WaterTerm(Kind kind, double balanceKelvin, double ruleKelvin)
    implements Serializable {
  /** The reasons. */
  @Internal
  public enum Kind {
    /** Flour: the rule counts it as heavy as the water; it holds about half as much heat. */
    FLOUR,
    /** Starter: the rule counts it as heavy as the water, or leaves it out. */
    STARTER,
    /** Room: the balance leaves it out, the rule has it stand for bowl and air. */
    ROOM,
    /** Salt: left out of the rule. */
    SALT,
    /** Seeds, soakers, sugar and the like: left out of the rule. */
    ADDITIONS,
    /** Bowl: left out of the rule. */
    BOWL,
    /** Heat of wetting: left out of the rule. */
    WETTING,
    /** Mixing: as the friction factor stands for it. */
    MIXING
  }

  /** Rule less balance, K. */
  public double differenceKelvin() {
    return ruleKelvin - balanceKelvin;
  }
}
