package doughtide.cli.session;

import doughtide.core.document.Catalogue;
import doughtide.core.forecast.RiseForecaster;
import doughtide.report.words.TradeVocabulary;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/** The surroundings of one call: everything that would make two runs differ. */
public interface Environment {

  /** The zone that applies when none is given. */
  ZoneId zone();

  /** The time now. */
  Instant now();

  /** The folder that relative file names start from. */
  Path directory();

  /** Standard input. */
  InputStream in();

  /** What can be named in options and files. */
  default Catalogue catalogue() {
    return Catalogue.standard().in(TradeVocabulary.ofAllLanguages());
  }

  /** Makes the forecasts of a starter of which nothing has been learned. */
  default RiseForecaster forecaster() {
    return RiseForecaster.standard();
  }

  /** A variable of the environment, if it is set. */
  default Optional<String> variable(String name) {
    return Optional.empty();
  }

  /**
   * The folder in which this program keeps what belongs to the user, if there is a place for it.
   */
  default Optional<Path> configuration() {
    return Optional.empty();
  }

  /** The files that this call reads and writes; none are remembered outside a call. */
  default CallFiles files() {
    return new CallFiles();
  }

  /** Whether a person watches, so that progress may be shown. */
  boolean terminal();

  /** Whether faults of the program are printed with their stack, for developers. */
  boolean trace();
}
