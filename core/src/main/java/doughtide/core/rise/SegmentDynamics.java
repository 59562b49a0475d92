package doughtide.core.rise;

/** The dynamics in one segment, with the temperature that is stated or follows the room. */
final class SegmentDynamics implements RungeKuttaKernel.Equations {
  private final RiseDynamics dynamics;
  private final Segment segment;
  private final double offset;
  private final double statedDriftPerHour;

  SegmentDynamics(RiseDynamics dynamics, Segment segment) {
    this.dynamics = dynamics;
    this.segment = segment;
    this.offset = dynamics.temperatureError();
    this.statedDriftPerHour =
        (segment.celsius(segment.toHours()) - segment.celsius(segment.fromHours()))
            / (segment.toHours() - segment.fromHours());
  }

  /**
   * Prepares the state at the start of this segment. Where the temperature is stated, the state's
   * own temperature only has to arrive at the stated one by the end, where a room may take over.
   */
  void enter(double[] state) {
    if (!segment.stage().inRoom()) {
      state[RiseDynamics.CELSIUS] = segment.celsius(segment.fromHours()) + offset;
    }
  }

  @Override
  public void computeDerivatives(double hours, double[] state, double[] derivative) {
    double outside = segment.celsius(hours) + offset;
    if (segment.stage().inRoom()) {
      double celsius = state[RiseDynamics.CELSIUS];
      dynamics.derivatives(celsius, state, derivative);
      derivative[RiseDynamics.CELSIUS] =
          (outside - celsius) / segment.stage().timeConstantHours()
              + derivative[RiseDynamics.CELSIUS] / segment.stage().heatCapacityJPerK();
    } else {
      dynamics.derivatives(outside, state, derivative);
      derivative[RiseDynamics.CELSIUS] = statedDriftPerHour;
    }
  }

  double fromHours() {
    return segment.fromHours();
  }

  double toHours() {
    return segment.toHours();
  }

  /** Dough temperature at an hour of the segment. */
  double celsius(double hours, double[] state) {
    return segment.stage().inRoom() ? state[RiseDynamics.CELSIUS] : segment.celsius(hours) + offset;
  }
}
