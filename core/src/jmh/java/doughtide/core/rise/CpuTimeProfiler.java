package doughtide.core.rise;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Processor time of the whole benchmark process per operation, for machines that other work shares;
 * garbage collection and compilation are included.
 */
public class CpuTimeProfiler implements InternalProfiler {
  private final OperatingSystemMXBean system =
      (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
  private long before;

  @Override
  public String getDescription() {
    return "processor time per operation";
  }

  @Override
  public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
    before = system.getProcessCpuTime();
  }

  @Override
  public Collection<? extends Result> afterIteration(
      BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
    double micros = (system.getProcessCpuTime() - before) / 1000.0;
    double operations = Math.max(1, result.getMetadata().getAllOps());
    return List.of(new ScalarResult("cpu", micros / operations, "us/op", AggregationPolicy.AVG));
  }
}
