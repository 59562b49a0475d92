package doughtide.cli.session;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.cli.TestEnvironment;
import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class OneCallTest {

  @Test
  void theClockStandsStillDuringACall() {
    AtomicInteger seconds = new AtomicInteger();
    TestEnvironment ticking =
        new TestEnvironment(
            Path.of("target"), () -> Instant.EPOCH.plusSeconds(seconds.getAndIncrement()), false);

    OneCall first = OneCall.in(ticking);
    OneCall second = OneCall.in(ticking);

    assertThat(first.now()).isEqualTo(Instant.EPOCH).isEqualTo(first.now());
    assertThat(second.now()).isEqualTo(Instant.EPOCH.plusSeconds(1));
  }
}
