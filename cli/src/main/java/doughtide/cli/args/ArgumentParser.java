package doughtide.cli.args;

import doughtide.cli.text.OneLine;
import doughtide.core.document.Catalogue;
import doughtide.core.quantity.InputException;
import doughtide.core.quantity.Nearest;
import doughtide.core.quantity.Shorten;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.cli.CommandLine;
import org.apache.commons.cli.DefaultParser;
import org.apache.commons.cli.MissingArgumentException;
import org.apache.commons.cli.Option;
import org.apache.commons.cli.Options;
import org.apache.commons.cli.ParseException;
import org.apache.commons.cli.UnrecognizedOptionException;

/** Turns the words after a command's name into {@link Arguments}. */
public final class ArgumentParser {

  private static final int LONGEST_SHOWN = 60;
  private static final int MOST_SUGGESTED = 3;

  /** What people call a thing, and the option that means it. */
  private final CommandSpec spec;

  private final Catalogue catalogue;
  private final Defaults defaults;

  /** Values for options that were not given. */
  @FunctionalInterface
  public interface Defaults {
    /**
     * The values to add, by option.
     *
     * @param given what was given, by option
     */
    Map<String, List<String>> besides(Map<String, List<String>> given);
  }

  /**
   * @param spec what the command accepts
   * @param catalogue what can be named
   */
  public ArgumentParser(CommandSpec spec, Catalogue catalogue) {
    this(spec, catalogue, given -> Map.of());
  }

  /**
   * @param spec what the command accepts
   * @param catalogue what can be named
   * @param defaults gives values that stand in for options
   */
  public ArgumentParser(CommandSpec spec, Catalogue catalogue, Defaults defaults) {
    this.spec = spec;
    this.catalogue = catalogue;
    this.defaults = defaults;
  }

  /**
   * Reads the words.
   *
   * @throws InputException for an unknown, repeated, incomplete or missing option, and for words
   *     too many or too few
   */
  public Arguments parse(List<String> words) {
    try {
      CommandLine line =
          DefaultParser.builder()
              .setAllowPartialMatching(false)
              .setStripLeadingAndTrailingQuotes(false)
              .get()
              .parse(options(), words.stream().map(this::covered).toArray(String[]::new));
      return checked(line);
    } catch (UnrecognizedOptionException e) {
      throw unknown(e.getOption());
    } catch (MissingArgumentException e) {
      throw withoutValue(e.getOption().getLongOpt());
    } catch (ParseException e) {
      throw new InputException(e.getMessage() + ": " + seeHelp());
    }
  }

  /** A number below zero is a word like any other, no option: a space before it says so. */
  private String covered(String word) {
    return spec.operands().most() > 0 && isBelowZero(word) ? " " + word : word;
  }

  private static boolean isBelowZero(String word) {
    return word.length() > 1
        && word.charAt(0) == '-'
        && word.charAt(1) >= '0'
        && word.charAt(1) <= '9';
  }

  private static List<String> uncovered(List<String> words) {
    return words.stream()
        .map(
            word -> {
              String bare = word.startsWith(" ") ? word.substring(1) : word;
              return isBelowZero(bare) ? bare : word;
            })
        .toList();
  }

  private Options options() {
    Options options = new Options();
    for (OptionSpec option : spec.options()) {
      options.addOption(Option.builder().longOpt(option.name()).hasArg(option.takesValue()).get());
    }
    return options;
  }

  private Arguments checked(CommandLine line) {
    Map<String, List<String>> typed = typed(line);
    Map<String, List<String>> values = new LinkedHashMap<>();
    for (OptionSpec option : spec.options()) {
      if (typed.containsKey(option.name())) {
        values.put(option.name(), valuesOf(option, typed.get(option.name())));
      }
    }
    Map<String, List<String>> added = defaults.besides(values);
    values.putAll(added);
    for (OptionSpec option : spec.options()) {
      if (option.isFreeText()) {
        values.getOrDefault(option.name(), List.of()).forEach(text -> checkSeen(option, text));
      }
      if (option.use() == OptionSpec.Use.REQUIRED && !values.containsKey(option.name())) {
        throw missing(option);
      }
    }
    List<String> operands = uncovered(line.getArgList());
    checkOperands(operands);
    return new Arguments(spec, values, operands, catalogue).withDefaults(added.keySet());
  }

  /** What stands behind each option that was given, by option. */
  private static Map<String, List<String>> typed(CommandLine line) {
    Map<String, List<String>> typed = new HashMap<>();
    for (Option each : line.getOptions()) {
      typed
          .computeIfAbsent(each.getLongOpt(), name -> new ArrayList<>())
          .addAll(each.getValuesList());
    }
    return typed;
  }

  /** Free text goes into files, pages and onto the terminal: nothing in it may steer those. */
  private static void checkSeen(OptionSpec option, String text) {
    OneLine.firstUnseen(text)
        .ifPresent(
            c -> {
              throw new InputException(
                  String.format(
                      Locale.ROOT,
                      "%s holds U+%04X, a character that is not seen: leave it out",
                      option.typed(),
                      c));
            });
  }

  private static List<String> valuesOf(OptionSpec option, List<String> typed) {
    if (!option.takesValue()) {
      return List.of("");
    }
    List<String> values = uncovered(typed);
    if (values.size() > 1 && option.use() != OptionSpec.Use.REPEATABLE) {
      throw new InputException(
          option.typed() + " is given " + values.size() + " times: give it once");
    }
    return values;
  }

  private void checkOperands(List<String> operands) {
    CommandSpec.Operands allowed = spec.operands();
    if (operands.size() > allowed.most()) {
      String extra = Shorten.to(operands.get(allowed.most()), LONGEST_SHOWN);
      throw new InputException("'" + extra + "' has no option before it" + dashes(extra));
    }
    if (operands.size() < allowed.least()) {
      throw new InputException(
          spec.name() + " needs " + allowed.words() + " after the options: " + seeHelp());
    }
  }

  /** A value whose quotes were forgotten, or an option whose dashes were. */
  private String dashes(String word) {
    return meant(word)
        .map(hint -> ": " + hint)
        .orElse(": put a value that holds spaces in quotes, or " + seeHelp());
  }

  private InputException unknown(String typed) {
    String name = typed.replaceFirst("^-+", "").replaceFirst("=.*", "");
    return new InputException(
        spec.name()
            + " has no option "
            + Shorten.to(typed, LONGEST_SHOWN)
            + ": "
            + meant(name).orElse(seeHelp()));
  }

  /** The options a word may stand for, by another word of the kitchen or by its letters. */
  private Optional<String> meant(String word) {
    List<String> names = optionNames();
    List<String> near =
        OtherWords.meant(word, names).map(List::of).orElseGet(() -> Nearest.allTo(word, names));
    if (near.isEmpty() || near.size() > MOST_SUGGESTED) {
      return near.stream().findFirst().map(first -> "did you mean --" + first + "?");
    }
    return Optional.of("did you mean --" + String.join(" or --", near) + "?");
  }

  private InputException withoutValue(String name) {
    OptionSpec option = spec.option(name);
    return new InputException(
        option.typed() + " needs a value: write for example " + option.typedExample());
  }

  private static InputException missing(OptionSpec option) {
    return new InputException(
        option.typed() + " is missing: write for example " + option.typedExample());
  }

  private List<String> optionNames() {
    List<String> names = new ArrayList<>();
    spec.options().forEach(option -> names.add(option.name()));
    names.add("help");
    return names;
  }

  private String seeHelp() {
    return "see doughtide " + spec.name() + " --help";
  }
}
