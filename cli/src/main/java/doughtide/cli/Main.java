package doughtide.cli;

import doughtide.cli.args.ArgumentParser;
import doughtide.cli.args.Arguments;
import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.HelpPage;
import doughtide.cli.args.Speech;
import doughtide.cli.command.Command;
import doughtide.cli.file.FileProblem;
import doughtide.cli.options.ClockOptions;
import doughtide.cli.options.KitchenOptions;
import doughtide.cli.session.Environment;
import doughtide.cli.session.OneCall;
import doughtide.cli.session.OutputClosedException;
import doughtide.cli.session.Session;
import doughtide.cli.session.StandardOutput;
import doughtide.cli.session.SystemEnvironment;
import doughtide.cli.shell.Completion;
import doughtide.cli.shell.ManualPage;
import doughtide.cli.text.OneLine;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Shorten;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.jar.Manifest;

/** Entry point of the command line. */
public final class Main {

  /** All is well. */
  public static final int OK = 0;

  /** What was given cannot be used; one line says why. */
  public static final int BAD_INPUT = 2;

  /** The program is at fault. */
  public static final int FAULT = 70;

  private Main() {}

  /**
   * Runs the program and ends the process: 0 done, 2 what was given cannot be used, 70 a fault of
   * the program.
   *
   * @param args command, options and operands
   */
  public static void main(String[] args) {
    Thread.setDefaultUncaughtExceptionHandler((thread, fault) -> ended(fault));
    int code = run(args, StandardOutput.out(), StandardOutput.err(), new SystemEnvironment());
    System.exit(code);
  }

  /** A thread that works for a command has ended; want of memory reaches the command, too. */
  private static void ended(Throwable fault) {
    if (!(fault instanceof OutOfMemoryError)) {
      fault(fault, StandardOutput.err(), new SystemEnvironment());
    }
  }

  /**
   * Runs the program without ending the process.
   *
   * @return the exit code
   */
  public static int run(String[] args, PrintStream out, PrintStream err, Environment environment) {
    try {
      dispatch(Arrays.asList(args), new Session(out, err, OneCall.in(environment)));
      out.flush();
      return OK;
    } catch (OutputClosedException e) {
      return closed(e, err);
    } catch (InputException e) {
      return refused(e, out, err);
    } catch (UncheckedIOException e) {
      return refused(FileProblem.of(cause(e)), out, err);
    } catch (IOException e) {
      return refused(FileProblem.of(e), out, err);
    } catch (OutOfMemoryError e) {
      return exhausted("memory", "give Java more with -Xmx, or split the job", err);
    } catch (StackOverflowError e) {
      return exhausted("stack", "please report it with the command you typed", err);
    } catch (RuntimeException | Error e) {
      return fault(e, err, environment);
    }
  }

  private static void dispatch(List<String> words, Session session) throws IOException {
    String first = words.isEmpty() ? "" : words.get(0);
    switch (first) {
      case "" -> session.out().print(HelpPage.ofQuestions(Commands.QUESTIONS));
      case "--help", "-h", "help" -> session.out().print(help(words));
      case "--version" -> session.out().println(versionLine());
      case "completion" -> session.out().print(Completion.of(shell(words), specs()));
      case "manual" -> session.out().print(ManualPage.of(version(), specs()));
      default -> execute(first, words.subList(1, words.size()), session);
    }
  }

  private static void execute(String name, List<String> words, Session session) throws IOException {
    if (name.startsWith("-")) {
      throw new InputException(
          "the command comes first, then its options: doughtide "
              + Commands.NAMES.get(0)
              + " "
              + Shorten.to(name, 60)
              + " … (see doughtide --help)");
    }
    Command command = Commands.named(name);
    Words.readAhead(Language.ENGLISH); // a tenth of a short call otherwise
    CommandSpec spec = KitchenOptions.added(command.spec());
    if (asksForHelp(words)) {
      session.out().print(help(spec, words, HelpPage::brief));
      return;
    }
    Environment environment = session.environment();
    Arguments typed =
        new ArgumentParser(
                spec,
                environment.catalogue(),
                given -> KitchenOptions.besides(spec, given, environment))
            .parse(words);
    Arguments arguments = ClockOptions.dated(typed, environment);
    KitchenOptions.choice(arguments);
    try {
      command.run(arguments, session);
      KitchenOptions.say(arguments, Speech.ENGLISH, session.out());
      arguments.notes().forEach(note -> session.err().println("doughtide: " + OneLine.of(note)));
    } catch (InputException e) {
      throw arguments.about(e);
    }
  }

  private static boolean asksForHelp(List<String> words) {
    int end = words.indexOf("--");
    List<String> options = end < 0 ? words : words.subList(0, end);
    return options.contains("--help") || options.contains("-h");
  }

  /** Of what the first word after the command names, else of the command. */
  private static String help(
      CommandSpec spec, List<String> words, Function<CommandSpec, String> otherwise) {
    return words.stream()
        .findFirst()
        .flatMap(spec::action)
        .map(action -> HelpPage.of(spec, action))
        .orElseGet(() -> otherwise.apply(spec));
  }

  private static String help(List<String> words) {
    if (words.size() > 1 && !words.get(1).startsWith("-")) {
      CommandSpec spec = KitchenOptions.added(Commands.named(words.get(1)).spec());
      return help(spec, words.subList(2, words.size()), HelpPage::of);
    }
    return HelpPage.ofProgram(specs());
  }

  private static List<CommandSpec> specs() {
    return Commands.NAMES.stream()
        .map(name -> KitchenOptions.added(Commands.named(name).spec()))
        .toList();
  }

  private static String shell(List<String> words) {
    return words.size() > 1 ? words.get(1) : "";
  }

  private static IOException cause(UncheckedIOException e) {
    return e.getCause() == null ? new IOException(e.getMessage()) : e.getCause();
  }

  private static int refused(InputException e, PrintStream out, PrintStream err) {
    try {
      out.flush();
    } catch (OutputClosedException alreadyFailing) {
      // The line below says what matters.
    }
    say(err, String.valueOf(e.getMessage()));
    return BAD_INPUT;
  }

  private static int closed(OutputClosedException e, PrintStream err) {
    if (e.readerLeft()) {
      return OK;
    }
    say(err, "the output could not be written (" + e.reason() + "): check the disk");
    return BAD_INPUT;
  }

  private static int exhausted(String what, String advice, PrintStream err) {
    say(err, "the program ran out of " + what + ": " + advice);
    return FAULT;
  }

  private static int fault(Throwable e, PrintStream err, Environment environment) {
    say(
        err,
        "a fault of the program, not of what you typed ("
            + e.getClass().getName()
            + "): please report it with the command you typed");
    if (environment.trace()) {
      e.printStackTrace(err);
    }
    return FAULT;
  }

  private static void say(PrintStream err, String message) {
    err.println("doughtide: " + OneLine.of(message));
    err.flush();
  }

  /** Name and version, as the manifest of the jar gives it. */
  public static String versionLine() {
    return "doughtide " + version();
  }

  /** The version, as the manifest of the jar gives it. */
  public static String version() {
    String version = Main.class.getPackage().getImplementationVersion();
    return version != null ? version : versionOfModule().orElse("(unpackaged)");
  }

  /** On the module path a package does not know its jar's manifest. */
  private static Optional<String> versionOfModule() {
    Module module = Main.class.getModule();
    if (!module.isNamed()) {
      return Optional.empty();
    }
    try (InputStream in = module.getResourceAsStream(JarFile.MANIFEST_NAME)) {
      return in == null
          ? Optional.empty()
          : Optional.ofNullable(
              new Manifest(in)
                  .getMainAttributes()
                  .getValue(Attributes.Name.IMPLEMENTATION_VERSION));
    } catch (IOException e) {
      return Optional.empty();
    }
  }
}
