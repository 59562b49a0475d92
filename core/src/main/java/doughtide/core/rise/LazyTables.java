package doughtide.core.rise;

import doughtide.core.dough.DoughFormula;
import java.io.Serializable;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The temperature tables of a dough, made when first asked for and shared by all its models. */
final class LazyTables implements Serializable {
  private static final long serialVersionUID = 1;

  private final DoughFormula formula;
  private final RiseParameters parameters;
  private transient @Nullable List<TemperatureTable> tables;

  LazyTables(DoughFormula formula, RiseParameters parameters) {
    this.formula = formula;
    this.parameters = parameters;
  }

  synchronized List<TemperatureTable> get() {
    List<TemperatureTable> made = tables;
    if (made == null) {
      made = RiseDynamics.tables(formula, parameters);
      tables = made;
    }
    return made;
  }
}
