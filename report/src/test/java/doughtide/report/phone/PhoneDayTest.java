package doughtide.report.phone;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakePlan;
import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.quantity.Hours;
import doughtide.report.SampleDays;
import doughtide.report.handout.ClassDayPages;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PhoneDayTest {
  private static final Words WORDS = Words.in(Language.ENGLISH);
  private static final List<String> NAMES = List.of("Anna's \"dark\", rye", "Harrow white");

  private static ClassDayPages day(ClassDayPages.Student... students) {
    return new ClassDayPages("day", SampleDays.two(), NAMES, SampleDays.ZERO, List.of(students));
  }

  private static String plain(String html) {
    return html.replaceAll("(?s)<(script|style).*?</\\1>", "")
        .replaceAll("<[^>]+>", "|")
        .replace("&quot;", "\"")
        .replace("&#39;", "'")
        .replace('\u00a0', ' ');
  }

  @Test
  void theNameOfADoughIsWholeAndABatchNamesItsStudentsByTheirFirstNames() {
    ClassDayPages.Student ann = new ClassDayPages.Student("Ann Millrace", 0, 2, Optional.empty());
    String text = plain(PhonePage.of(day(ann), WORDS).html());

    assertThat(text).contains(NAMES).contains("Ann").doesNotContain("Millrace");
  }

  @Test
  void theHourToShapeAndTheWindowOfItsRiseAreThoseOfThePlan() {
    DayPlan plan = SampleDays.two();
    List<PhoneDough> doughs = new PhoneDay(day(), WORDS).doughs();
    for (int i = 0; i < doughs.size(); i++) {
      BakePlan own = plan.plans().get(i);
      int number = i;
      DayStep shape =
          plan.steps().stream()
              .filter(each -> each.doughs().contains(number))
              .filter(each -> each.step().kind() == BakeStep.Kind.SHAPE)
              .findFirst()
              .orElseThrow();
      DoughSubject subject = new DoughSubject(doughs.get(i), WORDS);
      PhoneClock clock = new PhoneClock(doughs.get(i).mixedAt(), 48, true, WORDS);
      String printed = WORDS.dayAndClock(Hours.after(SampleDays.ZERO, shape.step().fromHour()));
      assertThat(subject.sentence(clock)).contains("Shape about " + printed);
      assertThat(subject.events())
          .filteredOn(event -> event.percent().equals(subject.risePercent()))
          .singleElement()
          .satisfies(
              event ->
                  assertThat(event.window().late().orElseThrow())
                      .isEqualTo(own.shapeWindow().late().orElseThrow() - own.mixHour()));
    }
  }
}
