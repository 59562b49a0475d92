package doughtide.core.rise;

/** A finished integration that can be asked for the state at any hour inside it. */
interface DenseSolution {
  /** Ends of the integration steps, hours, ascending, the start included. */
  double[] mesh();

  /** Writes the state at an hour inside the mesh. */
  void stateAt(double hours, double[] state);
}
