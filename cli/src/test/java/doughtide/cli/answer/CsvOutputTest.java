package doughtide.cli.answer;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class CsvOutputTest {

  @Test
  void numbersStayNumbersAndFormulasBecomeText() {
    StringWriter text = new StringWriter();
    CsvOutput csv = new CsvOutput(text).header("name", "riseLikelyPercent", "hours");
    csv.text("=SUM(A1:A9)").number(-1.25, 2).number(Double.NaN, 2).endRow();
    csv.text("a, \"b\"").number(3, 2).number(0.12345, 2).endRow();
    csv.text("@x").text("-x").text("+x").endRow();
    csv.flush();
    assertThat(text.toString())
        .isEqualTo(
            """
            name,riseLikelyPercent,hours
            '=SUM(A1:A9),-1.25,
            "a, ""b""\",3,0.12
            '@x,'-x,'+x
            """);
  }
}
