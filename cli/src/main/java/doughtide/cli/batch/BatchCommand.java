package doughtide.cli.batch;

import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.cli.command.Command;
import doughtide.cli.file.OutputFile;
import doughtide.cli.options.OutputOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.Session;
import doughtide.cli.text.OneLine;
import doughtide.core.forecast.RiseForecaster;
import doughtide.core.quantity.InputException;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Forecasts a whole file of doughs. */
public final class BatchCommand implements Command {

  private static final String OUT = "out";
  private static final String FORMAT = "format";
  private static final String MEMBERS = "members";
  private static final String THREADS = "threads";
  private static final String RESUME = "resume";
  private static final int USUAL_MEMBERS = 128;

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("batch", "forecasts a whole file of doughs")
        .operands("FILE", 1, 1)
        .options(
            OptionSpec.value(
                OUT, "FILE", "forecasts.csv", "Writes the forecasts there instead of printing."),
            OptionSpec.value(FORMAT, "FORM", "jsonl", "csv, or jsonl for one object a line.")
                .withDefault("that of the input"),
            OptionSpec.value(
                    MEMBERS,
                    "COUNT",
                    "512",
                    "How many runs each forecast draws, 8 to 65536; fewer is faster and rougher.")
                .withDefault("128"),
            OptionSpec.value(THREADS, "COUNT", "2", "How many threads work, 1 to 256.")
                .withDefault("all cores"),
            OptionSpec.flag(
                RESUME,
                "Goes on with the unfinished file that a run with --out left behind: the same"
                    + " name with .part at its end."),
            OutputOptions.overwrite())
        .example("Prints the forecasts", "doughs.csv")
        .example(
            "A long job, to be continued if it is stopped",
            "doughs.csv",
            "--out",
            "forecasts.csv",
            "--resume")
        .note(
            "The columns are named like the options of rise: id, dough_temp, starter, hydration,"
                + " salt, flour and so on, with units in the cells (25C, 72%); an empty cell"
                + " means the default. Lines that begin with { are JSON: {\"id\":\"A\","
                + "\"dough_temp\":\"25C\"}. - reads standard input.")
        .note(
            "A row that cannot be used is named on standard error and in the column error; the"
                + " others are done, and the exit code is 2.")
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) throws IOException {
    int members = arguments.count(MEMBERS, 8, 65_536).orElse(USUAL_MEMBERS);
    int threads =
        arguments.count(THREADS, 1, 256).orElseGet(Runtime.getRuntime()::availableProcessors);
    Optional<BatchFormat> asked = arguments.choice(FORMAT, BatchFormat.class);
    Optional<OutputFile> out = OutputOptions.file(OUT, arguments, session.environment());
    if (out.isEmpty() && arguments.has(RESUME)) {
      throw new InputException(
          "--resume goes on with a file: name it, for example --out forecasts.csv");
    }
    RiseForecaster forecaster = RiseForecaster.standard().withMembers(members).onCallingThread();
    Environment environment = session.environment();
    String name = arguments.operands().get(0);
    try (BatchInput input = BatchInput.open(name, BatchRows.COLUMNS, environment)) {
      BatchRows rows = BatchRows.of(input.reader(), asked, forecaster, environment);
      BatchRun run = new BatchRun(input, rows, new InOrder(threads), session);
      if (out.isEmpty()) {
        print(run, session);
      } else {
        OutputFile file = out.orElseThrow();
        new BatchFile(file, arguments.has(OutputOptions.OVERWRITE))
            .write(run, arguments.has(RESUME));
        session.out().println(run.rows() + " rows: " + OneLine.of(file.shown()));
      }
      run.complain();
    }
  }

  private static void print(BatchRun run, Session session) throws IOException {
    OutputStream out = new BufferedOutputStream(session.out());
    out.write(run.header());
    run.writeTo(out);
    out.flush();
  }
}
