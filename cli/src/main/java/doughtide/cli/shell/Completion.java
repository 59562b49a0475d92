package doughtide.cli.shell;

import doughtide.cli.args.CommandSpec;
import doughtide.cli.args.OptionSpec;
import doughtide.core.quantity.InputException;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** A script with which a shell completes commands, options and names of files. */
public final class Completion {

  /** The shells, and where each looks for the script. */
  private static final List<String> SHELLS = List.of("bash", "zsh", "fish");

  private static final List<String> FIRST = List.of("help", "--help", "--version");

  private final List<CommandSpec> commands;
  private final StringBuilder script = new StringBuilder();

  private Completion(List<CommandSpec> commands) {
    this.commands = commands;
  }

  /**
   * The script for a shell.
   *
   * @param shell bash, zsh or fish
   * @param commands all of them
   * @throws InputException for another shell
   */
  public static String of(String shell, List<CommandSpec> commands) {
    Completion completion = new Completion(commands);
    switch (shell) {
      case "bash" -> completion.bash();
      case "zsh" -> completion.zsh();
      case "fish" -> completion.fish();
      default -> throw InputException.unknown("shell", shell, SHELLS);
    }
    return completion.script.toString();
  }

  private String names() {
    return commands.stream().map(CommandSpec::name).collect(Collectors.joining(" "));
  }

  private static boolean takesFile(OptionSpec option) {
    return option.word().equals("FILE") || option.word().equals("FOLDER");
  }

  private static String typed(CommandSpec spec, Predicate<OptionSpec> which) {
    return spec.options().stream()
        .filter(which)
        .map(OptionSpec::typed)
        .collect(Collectors.joining(" "));
  }

  private static String actions(CommandSpec spec) {
    return spec.actions().stream().map(CommandSpec.Action::name).collect(Collectors.joining(" "));
  }

  private void bash() {
    line("# Completion of doughtide for bash: source this file.");
    line("_doughtide() {");
    line("  local cur=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}");
    line("  local options='' files='' values='' first=''");
    line("  COMPREPLY=()");
    line("  if ((COMP_CWORD == 1)); then");
    line("    COMPREPLY=($(compgen -W '%s %s' -- \"$cur\"))", names(), String.join(" ", FIRST));
    line("    return");
    line("  fi");
    line("  case ${COMP_WORDS[1]} in");
    line("    help) COMPREPLY=($(compgen -W '%s' -- \"$cur\")); return ;;", names());
    commands.forEach(this::bash);
    line("  esac");
    line("  case \" $values \" in *\" $before \"*) return ;; esac");
    line("  case \" $files \" in");
    line(
        "    *\" $before \"*) compopt -o filenames; COMPREPLY=($(compgen -f -- \"$cur\"));"
            + " return ;;");
    line("  esac");
    line("  case $cur in");
    line("    -*) COMPREPLY=($(compgen -W \"$options --help\" -- \"$cur\")) ;;");
    line("    *)");
    line("      compopt -o filenames");
    line("      COMPREPLY=($(compgen -W \"$first\" -- \"$cur\") $(compgen -f -- \"$cur\"))");
    line("      ;;");
    line("  esac");
    line("}");
    line("complete -F _doughtide doughtide");
  }

  private void bash(CommandSpec spec) {
    line("    %s)", spec.name());
    line("      options='%s'", typed(spec, option -> true));
    line("      files='%s'", typed(spec, Completion::takesFile));
    line("      values='%s'", typed(spec, each -> each.takesValue() && !takesFile(each)));
    line("      first='%s'", actions(spec));
    line("      ;;");
  }

  private void zsh() {
    line("#compdef doughtide");
    line("# Completion of doughtide for zsh: put it on fpath under the name _doughtide.");
    line("_doughtide() {");
    line("  if ((CURRENT == 2)); then");
    line("    local -a commands=(");
    commands.forEach(
        spec -> line("      '%s:%s'", spec.name(), zsh(spec.summary()).replace(":", "\\:")));
    line("      'help:explains a command' '--help:lists the commands' '--version:the version'");
    line("    )");
    line("    _describe command commands");
    line("    return");
    line("  fi");
    line("  case $words[2] in");
    line("    help) compadd %s ;;", names());
    commands.forEach(this::zsh);
    line("  esac");
    line("}");
    line("_doughtide \"$@\"");
  }

  private void zsh(CommandSpec spec) {
    line("    %s)", spec.name());
    line("      shift words; ((CURRENT--))");
    line("      _arguments \\");
    for (OptionSpec option : spec.options()) {
      String many = option.use() == OptionSpec.Use.REPEATABLE ? "*" : "";
      String value = takesFile(option) ? ":FILE:_files" : ":" + zshWord(option) + ": ";
      line(
          "        '%s%s[%s]%s' \\",
          many,
          option.typed(),
          zsh(option.firstSentence()).replace("[", "\\[").replace("]", "\\]"),
          option.takesValue() ? value : "");
    }
    line("        '--help[Explains the command]' \\");
    String first = spec.actions().isEmpty() ? "" : "'1:what:(" + actions(spec) + ")' ";
    line("        %s'*:FILE:_files'", first);
    line("      ;;");
  }

  private static String zshWord(OptionSpec option) {
    return option.word().replace(":", "\\:");
  }

  /** Inside single quotes. */
  private static String zsh(String text) {
    return text.replace("'", "'\\''");
  }

  private void fish() {
    line("# Completion of doughtide for fish: put it into ~/.config/fish/completions.");
    line("complete -c doughtide -f");
    for (CommandSpec spec : commands) {
      line(
          "complete -c doughtide -n __fish_use_subcommand -a %s -d '%s'",
          spec.name(), fish(spec.summary()));
    }
    line("complete -c doughtide -n __fish_use_subcommand -a help -d 'explains a command'");
    line("complete -c doughtide -n '__fish_seen_subcommand_from help' -a '%s'", names());
    commands.forEach(this::fish);
  }

  private void fish(CommandSpec spec) {
    String here = "complete -c doughtide -n '__fish_seen_subcommand_from " + spec.name() + "'";
    for (OptionSpec option : spec.options()) {
      String value = takesFile(option) ? " -r -F" : option.takesValue() ? " -x" : "";
      line("%s -l %s%s -d '%s'", here, option.name(), value, fish(option.firstSentence()));
    }
    if (!spec.actions().isEmpty()) {
      line("%s -a '%s'", here, actions(spec));
    }
    if (!spec.operands().words().isEmpty()) {
      line("%s -F", here);
    }
  }

  /** Inside single quotes. */
  private static String fish(String text) {
    return text.replace("\\", "\\\\").replace("'", "\\'");
  }

  private void line(String text, Object... parts) {
    script.append(parts.length == 0 ? text : String.format(Locale.ROOT, text, parts));
    script.append('\n');
  }
}
