package doughtide.examples;

import doughtide.cli.batch.BatchRows;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import org.apache.beam.sdk.Pipeline;
import org.apache.beam.sdk.io.FileIO;
import org.apache.beam.sdk.io.TextIO;
import org.apache.beam.sdk.transforms.DoFn;
import org.apache.beam.sdk.transforms.MapElements;
import org.apache.beam.sdk.transforms.ParDo;
import org.apache.beam.sdk.transforms.Reshuffle;
import org.apache.beam.sdk.transforms.SerializableFunction;
import org.apache.beam.sdk.values.KV;
import org.apache.beam.sdk.values.TypeDescriptors;

/**
 * Doughs for more than one machine: a pipeline of Apache Beam in which a row of {@code batch} is an
 * ordinary function. Whatever the pipeline runs on sends the function to its workers and the rows
 * after it. The lines that come out are those of {@code batch}, in no order; each begins with the
 * number of its row.
 */
public final class ManyDoughs {
  private ManyDoughs() {}

  /** The lines of a file with their numbers, without its header and empty lines. */
  static final class Rows extends DoFn<FileIO.ReadableFile, KV<Long, String>> {
    /** Reads one file. */
    @ProcessElement
    public void read(@Element FileIO.ReadableFile file, OutputReceiver<KV<Long, String>> out)
        throws IOException {
      try (BufferedReader lines =
          new BufferedReader(Channels.newReader(file.open(), StandardCharsets.UTF_8))) {
        long number = 1;
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
          if (number > 1 && !line.isBlank()) {
            out.output(KV.of(number, line));
          }
          number++;
        }
      }
    }
  }

  /**
   * Adds the steps to a pipeline.
   *
   * @param from a file of rows, CSV
   * @param to what the names of the files with answers begin with
   * @param rows the function, for the header of that file
   */
  public static void addTo(Pipeline pipeline, String from, String to, BatchRows rows) {
    addTo(pipeline, from, to, row -> rows.answer(row.getKey(), row.getValue()));
  }

  static void addTo(
      Pipeline pipeline,
      String from,
      String to,
      SerializableFunction<KV<Long, String>, String> forecast) {
    pipeline
        .apply("find", FileIO.match().filepattern(from))
        .apply("open", FileIO.readMatches())
        .apply("read", ParDo.of(new Rows()))
        .apply("spread", Reshuffle.viaRandomKey())
        .apply("forecast", MapElements.into(TypeDescriptors.strings()).via(forecast))
        .apply("write", TextIO.write().to(to));
  }
}
