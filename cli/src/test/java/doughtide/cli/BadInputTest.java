package doughtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What cannot be used is refused in one line that says what to do, with exit code 2. */
class BadInputTest {

  /** Words separated by spaces (an underscore is a space inside a word); a part of the line. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "rise | --dough-temp is missing: write for example --dough-temp 25C",
        "rise --dough-temp | --dough-temp needs a value: write for example --dough-temp 25C",
        "rise --dough-temp 25 | --dough-temp 25 has no unit: write --dough-temp 25C (or 77F)",
        "rise --dough-temp 76 | has no unit: write --dough-temp 76F (or 24.4C)",
        "rise --dough-temp 24,5 | has no unit: write --dough-temp 24.5C (or 76.1F)",
        "rise --dough-temp -5 | has no unit: write --dough-temp -5C (or 23F)",
        "rise --dough-temp 298K | the unit 'K' is not known here: use C or F",
        "rise --dough-temp NaNC | is not a temperature: write for example --dough-temp 25C",
        "rise --dough-temp NaN | is not a temperature",
        "rise --dough-temp Infinity | is not a temperature",
        "rise --dough-temp 0x19C | is not a temperature: write for example --dough-temp 25C",
        "rise --dough-temp 1e1C | is not a temperature",
        "rise --dough-temp 25..5C | is not a temperature",
        "rise --dough-temp 999999999C | is outside",
        "rise --dough-temp 99999999999999C | is not a temperature",
        "rise --dough-temp -500C | is outside",
        "rise --dough-temp `` | --dough-temp is empty",
        "rise --dough-temp 240C | --dough-temp 240C: dough temperature 240 °C is outside -2…45 °C",
        "rise --dough-temp 240C | (did you mean 24 °C?)",
        "rise --dough-temp 25C,3h:-20C | dough temperature -20 °C is outside -2…45 °C",
        "rise --dough-temp 25C --dough-temp 26C | --dough-temp is given 2 times: give it once",
        "rise --dough-temp 25C,22C | from when is it 22C?",
        "rise --dough-temp 3h:22C | must begin with the temperature at mixing",
        "rise --dough-temp 25C,3h:22C,2h:20C | hour 2 does not come after hour 3",
        "rise --dough-temp 25C,3:22C | has no unit: write --dough-temp 3h (or 180min)",
        "rise --dough-temp 25C, | from when",
        "rise --dough-temp 25C --hydration 72 | has no unit: write --hydration 72%",
        "rise --dough-temp 25C --hydration 0.72 | write --hydration 72% (or 0.72%)",
        "rise --dough-temp 25C --hydration 720% | is outside",
        "rise --dough-temp 25C --hydration 20% | is outside 45…200 %",
        "rise --dough-temp 25C --hydration 1,250% | can be read two ways: write 1250% or 1.250%",
        "rise --dough-temp 25C --salt -2% | --salt -2%: share -2 % is outside",
        "rise --dough-temp 25C --salt 12% | is outside 0…4 %",
        "rise --dough-temp 25C --starter 20% --prefermented 9% | exclude each other",
        "rise --dough-temp 25C --hydration 70% --dough-yield 170 | exclude each other",
        "rise --dough-temp 25C --dough-yield 170% | takes no unit: write --dough-yield 170",
        "rise --dough-temp 25C --dough-yield 70 | --dough-yield 70 is outside 145…300",
        "rise --dough-temp 25C --starter 0% | prefermented flour 0 % is outside",
        "rise --dough-temp 25C --starter-hydration 1000% | is outside",
        "rise --dough-temp 25C --starter-condition rype | did you mean ripe?",
        "rise --dough-temp 25C --starter-condition tired | use ripe, young, past best, from cold",
        "rise --dough-temp 25C --flour wite | did you mean white?",
        "rise --dough-temp 25C --flour white:80%,rye | each flour needs its share in per cent",
        "rise --dough-temp 25C --flour white:80,rye:20% | each flour needs its share",
        "rise --dough-temp 25C --flour white:80%,rye:30% | add up to 110 %",
        "rise --dough-temp 25C --flour white:80 | has no unit: write --flour 80%",
        "rise --dough-temp 25C --altitude 1500 | write --altitude 1500m (or 4921ft)",
        "rise --dough-temp 25C --altitude 9000m | is outside",
        "rise --dough-temp 25C --altitude 1km | use m or ft",
        "rise --dough-temp 25C --mixed-at 9.30 | is not a time: write --mixed-at 09:30",
        "rise --dough-temp 25C --mixed-at 25:00 | is no time on any clock",
        "rise --dough-temp 25C --mixed-at 9:30pm | write 21:30",
        "rise --dough-temp 25C --mixed-at 2027-02-30T12:00 | is no time on any clock or calendar",
        "rise --dough-temp 25C --mixed-at 0027-02-03T12:00 | outside the years",
        "rise --dough-temp 25C --mixed-at 2027-03-28T01:30 | write 02:30",
        "rise --dough-temp 25C --zone Europe/Berlin | says nothing without --mixed-at",
        "rise --dough-temp 25C --mixed-at 09:30 --zone Europe/Berlim | mean Europe/Berlin?",
        "rise --dough-temp 25C --mixed-at 09:30 --zone Nowhere | is no zone known here",
        "rise --dough-temp 25C hydration 72% | 'hydration' has no option before it: did you mean",
        "rise --dough-temp 25_C --flour white rye | 'rye' has no option before it",
        "rise --dough-temp 25C --oven | rise has no option --oven",
        "rise -t 25C | rise has no option -t",
        "rise --dough-temp 25C --rise 60 | has no unit: write --rise 60%",
        "rise --dough-temp 25C --rise 0% | --rise 0 % is outside 1…1000 %",
        "rise --dough-temp 25C --members 3 | --members 3 is outside 8…65536",
        "rise --dough-temp 25C --members few | is not a whole number: give one from 8 to 65536",
        "rise --dough-temp 25C --paper A5 | --paper says nothing without --chart",
        "rise --dough-temp 25C --chart a.pdf --paper A3 | is not known: use a4, a5",
        "rise --dough-temp 25C --chart a.gif | must end in .pdf, .svg or .png",
        "rise --dough-temp 25C --chart none/a.pdf | does not exist: make it first",
        "rise --dough-temp 25C --format xml | is not known: use text, json, csv",
        "--dough-temp 25C | the command comes first",
        "help rsie | did you mean rise?",
      })
  void isRefusedInOneLine(String words, String part) {
    String[] args =
        Arrays.stream(words.split(" "))
            .map(word -> word.equals("``") ? "" : word.replace('_', ' '))
            .toArray(String[]::new);
    assertThat(CliRun.of(args).refusal()).contains(part);
  }
}
