package doughtide.core.rise;

import doughtide.core.dough.DoughFormula;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What all models of a dough share, made when first asked for: its basis, and its temperature
 * tables.
 */
final class LazyBasis implements Serializable {
  private static final long serialVersionUID = 1;

  private final DoughFormula formula;
  private final RiseParameters parameters;
  private transient @Nullable DoughBasis basis;
  private transient @Nullable List<TemperatureTable> tables;

  LazyBasis(DoughFormula formula, RiseParameters parameters) {
    this.formula = formula;
    this.parameters = parameters;
  }

  synchronized DoughBasis basis() {
    DoughBasis made = basis;
    if (made == null) {
      made = new DoughBasis(formula, parameters);
      basis = made;
    }
    return made;
  }

  /** One for each pair of rate curves. */
  synchronized List<TemperatureTable> tables() {
    List<TemperatureTable> made = tables;
    if (made == null) {
      made = basis().sources().stream().map(TemperatureTable::new).toList();
      tables = made;
    }
    return made;
  }
}
