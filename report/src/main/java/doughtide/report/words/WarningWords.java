package doughtide.report.words;

import doughtide.core.forecast.Warning;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What a reader of a page should know about its hours, in the words of a language. */
public final class WarningWords {

  private final Words words;

  public WarningWords(Words words) {
    this.words = words;
  }

  /** One sentence for each kind of warning, in order. */
  @SafeVarargs
  public final List<String> lines(List<Warning>... lists) {
    Set<String> lines = new LinkedHashSet<>();
    for (List<Warning> list : lists) {
      list.forEach(warning -> lines.add(words.say("warning." + warning.kind().name())));
    }
    return List.copyOf(lines);
  }
}
