package doughtide.cli.batch;

import doughtide.cli.file.FileProblem;
import doughtide.cli.file.OutputFile;
import doughtide.cli.file.PartFile;
import doughtide.core.quantity.InputException;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The forecasts of a batch as a file: written as {@code NAME.part}, and moved to its name when it
 * is complete.
 */
final class BatchFile {

  private static final int BUFFER = 1 << 15;

  private final OutputFile target;
  private final boolean overwrite;

  BatchFile(OutputFile target, boolean overwrite) {
    this.target = target;
    this.overwrite = overwrite;
  }

  /**
   * Writes all rows.
   *
   * @param resume whether to go on with what an earlier run left
   * @throws InputException if it cannot be written, or what is there belongs to another job
   */
  void write(BatchRun run, boolean resume) {
    Path path = target.beside(".part");
    String shown = target.shown() + ".part";
    if (!resume && !overwrite && Files.exists(path)) {
      throw new InputException(
          FileProblem.quoted(shown)
              + " is there from a run that was stopped: add --resume to go on with it, or"
              + " --overwrite to start again");
    }
    try (PartFile part = PartFile.open(path, shown)) {
      begin(part, run, resume);
      OutputStream out = new BufferedOutputStream(part.out(), BUFFER);
      run.writeTo(out);
      out.flush();
      part.force();
      target.finish(part.path());
    } catch (IOException e) {
      throw new InputException(
          String.valueOf(FileProblem.of(shown, e).getMessage())
                  .replace("; nothing was left behind", "")
              + "; what is written so far stays for --resume");
    }
  }

  private void begin(PartFile part, BatchRun run, boolean resume) throws IOException {
    byte[] header = run.header();
    if (resume) {
      part.keepWholeLines(header.length > 0 ? 1 : 0, run.goodEnding());
    } else {
      part.clear();
    }
    long done = part.lines() - (header.length > 0 ? 1 : 0);
    if (part.lines() == 0) {
      part.out().write(header);
    } else if (done == 0 ? !part.endsWith(header) : !sameJob(part, run.skip(done))) {
      throw new InputException(
          FileProblem.quoted(target.shown() + ".part")
              + " comes from another input or other options: give those again, or --overwrite"
              + " without --resume to start again");
    }
    run.wereBad(part.unlike(), part.firstUnlike());
  }

  private static boolean sameJob(PartFile part, Optional<byte[]> line) throws IOException {
    return line.isPresent() && part.endsWith(line.orElseThrow());
  }
}
