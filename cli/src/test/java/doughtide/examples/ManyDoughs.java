package doughtide.examples;

import doughtide.cli.batch.BatchRows;
import doughtide.core.forecast.RiseForecaster;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.apache.beam.sdk.Pipeline;
import org.apache.beam.sdk.io.FileIO;
import org.apache.beam.sdk.io.FileSystems;
import org.apache.beam.sdk.io.fs.MatchResult;
import org.apache.beam.sdk.io.fs.ResourceId;
import org.apache.beam.sdk.options.PipelineOptionsFactory;
import org.apache.beam.sdk.transforms.DoFn;
import org.apache.beam.sdk.transforms.ParDo;
import org.apache.beam.sdk.transforms.Reshuffle;
import org.apache.beam.sdk.transforms.SerializableFunction;
import org.apache.beam.sdk.values.KV;

/**
 * Doughs for more than one machine: a pipeline of Apache Beam in which a row of {@code batch} is an
 * ordinary function. Whatever the pipeline runs on sends the function to its workers and the rows
 * after it. Each part of the rows becomes a file, which is there as a whole or not at all; the
 * files in the order of their names are the lines of {@code batch}. A pipeline that was stopped is
 * resumed by starting it again: it leaves out the parts whose files are there.
 */
public final class ManyDoughs {
  private static final int ROWS_OF_A_PART = 500;

  private ManyDoughs() {}

  /** The lines of a file in parts, with the number of the first, without what is there already. */
  static final class Parts extends DoFn<FileIO.ReadableFile, KV<Long, List<String>>> {
    private static final long serialVersionUID = 1;

    private final String to;
    private final int size;

    Parts(String to, int size) {
      this.to = to;
      this.size = size;
    }

    /** Reads one file; its first line is the header. */
    @ProcessElement
    public void read(@Element FileIO.ReadableFile file, OutputReceiver<KV<Long, List<String>>> out)
        throws IOException {
      try (BufferedReader lines =
          new BufferedReader(Channels.newReader(file.open(), StandardCharsets.UTF_8))) {
        lines.readLine();
        long first = 2;
        for (List<String> part = part(lines); !part.isEmpty(); part = part(lines)) {
          if (!isThere(file(to, first))) {
            out.output(KV.of(first, part));
          }
          first += part.size();
        }
      }
    }

    private List<String> part(BufferedReader lines) throws IOException {
      List<String> part = new ArrayList<>();
      while (part.size() < size) {
        String line = lines.readLine();
        if (line == null) {
          break;
        }
        part.add(line);
      }
      return part;
    }

    private static boolean isThere(String name) throws IOException {
      return FileSystems.match(name).status() == MatchResult.Status.OK;
    }
  }

  /** The answers of a part, one a line, in a file. */
  static final class Answers extends DoFn<KV<Long, List<String>>, Void> {
    private static final long serialVersionUID = 1;

    private final String to;
    private final SerializableFunction<KV<Long, String>, String> forecast;

    Answers(String to, SerializableFunction<KV<Long, String>, String> forecast) {
      this.to = to;
      this.forecast = forecast;
    }

    /** Writes under another name first, so that a worker that is lost leaves no half file. */
    @ProcessElement
    public void write(@Element KV<Long, List<String>> part) throws IOException {
      StringBuilder answers = new StringBuilder();
      long number = part.getKey();
      for (String line : part.getValue()) {
        if (!line.isBlank()) {
          answers.append(forecast.apply(KV.of(number, line))).append('\n');
        }
        number++;
      }
      ResourceId unfinished = resource(to + ".unfinished-" + UUID.randomUUID());
      try (var out = Channels.newOutputStream(FileSystems.create(unfinished, "text/csv"))) {
        out.write(answers.toString().getBytes(StandardCharsets.UTF_8));
      }
      FileSystems.rename(List.of(unfinished), List.of(resource(file(to, part.getKey()))));
    }

    private static ResourceId resource(String name) {
      return FileSystems.matchNewResource(name, false);
    }
  }

  private static String file(String to, long first) {
    return String.format(Locale.ROOT, "%s-%012d.csv", to, first);
  }

  /**
   * Adds the steps to a pipeline.
   *
   * @param from a file of rows, CSV
   * @param to what the names of the files with answers begin with
   * @param rows the function, for the header of that file
   */
  public static void addTo(Pipeline pipeline, String from, String to, BatchRows rows) {
    addTo(pipeline, from, to, ROWS_OF_A_PART, row -> rows.answer(row.getKey(), row.getValue()));
  }

  static void addTo(
      Pipeline pipeline,
      String from,
      String to,
      int size,
      SerializableFunction<KV<Long, String>, String> forecast) {
    pipeline
        .apply("find", FileIO.match().filepattern(from))
        .apply("open", FileIO.readMatches())
        .apply("read", ParDo.of(new Parts(to, size)))
        .apply("spread", Reshuffle.viaRandomKey())
        .apply("forecast and write", ParDo.of(new Answers(to, forecast)));
  }

  /**
   * A program of its own, for an engine that its options name.
   *
   * @param words the file of rows, what the names of the files with answers begin with, the rows of
   *     a part, and options of Beam
   */
  public static void main(String[] words) throws IOException {
    String[] options = Arrays.copyOfRange(words, 3, words.length);
    Pipeline pipeline = Pipeline.create(PipelineOptionsFactory.fromArgs(options).create());
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(8).onCallingThread();
    BatchRows rows = BatchRows.of(header(words[0]), forecaster);
    addTo(
        pipeline,
        words[0],
        words[1],
        Integer.parseInt(words[2]),
        row -> rows.answer(row.getKey(), row.getValue()));
    pipeline.run().waitUntilFinish();
  }

  private static String header(String from) throws IOException {
    ResourceId file = FileSystems.matchSingleFileSpec(from).resourceId();
    try (BufferedReader lines =
        new BufferedReader(Channels.newReader(FileSystems.open(file), StandardCharsets.UTF_8))) {
      return lines.readLine();
    }
  }
}
