package doughtide.report.handout;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.core.day.BakeStep;
import doughtide.core.day.DayPlan;
import doughtide.core.day.DayStep;
import doughtide.core.day.OvenLoad;
import doughtide.report.SampleDays;
import doughtide.report.Samples;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ClassDayPagesTest {

  private static String side(ClassDayPages pages, Words words, int number) throws IOException {
    byte[] pdf = pages.bytes(PageFormat.a4(), words, Samples.DATE);
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper text = new PDFTextStripper();
      text.setStartPage(number);
      text.setEndPage(number);
      return text.getText(document).replaceAll("[\\s\u00a0]+", " ");
    }
  }

  private static ClassDayPages pages(ClassDayPages.Student... students) {
    return new ClassDayPages(
        "day", SampleDays.two(), SampleDays.TWO_NAMES, SampleDays.ZERO, List.of(students));
  }

  private static ClassDayPages.Student student(String name, int dough) {
    return new ClassDayPages.Student(name, dough, 1, Optional.empty());
  }

  @ParameterizedTest
  @EnumSource
  void aStudentsPageWarnsOfTheJarAndOfTheCerealsOnItsOneSide(Language language) throws IOException {
    Words words = Words.in(language);
    ClassDayPages pages = pages(student("Eira", 0));

    String text = side(pages, words, 1);

    assertThat(text).contains("Eira").contains(plain(words.say("caution.jar")));
    assertThat(text).contains(words.named("cereal", "wheat"));
    assertThat(text).doesNotContain("{");
    assertThat(side(pages, words, 2)).doesNotContain(plain(words.say("caution.jar")));
  }

  /** Two doughs of two loaves each, all in the oven one by one or together. */
  @Test
  void aStudentBakesWhatIsHersInTheOrderOfShaping() {
    DayPlan four = loaded(SampleDays.two(), new int[] {1, 1, 0, 0});
    List<ClassDayPages.Student> all =
        List.of(student("Ann", 0), student("Dov", 1), student("Eira", 0), student("Finn", 1));
    StudentBatches batches = new StudentBatches(four, all);

    assertThat(bakes(batches, 0)).containsExactly(32.0);
    assertThat(bakes(batches, 1)).containsExactly(30.0);
    assertThat(bakes(batches, 2)).containsExactly(33.0);
    assertThat(bakes(batches, 3)).containsExactly(31.0);
    assertThat(batches.in(four.loads().get(0))).containsExactly(1);
    List<ClassDayPages.Student> one =
        List.of(new ClassDayPages.Student("Ann", 0, 2, Optional.empty()));
    assertThat(bakes(new StudentBatches(four, one), 0)).containsExactly(32.0, 33.0);
    assertThat(batches.steps(1).stream().map(each -> each.step().kind()))
        .containsOnlyOnce(BakeStep.Kind.BAKE, BakeStep.Kind.COOL)
        .contains(BakeStep.Kind.MIX, BakeStep.Kind.READY);
  }

  private static List<Double> bakes(StudentBatches batches, int student) {
    return batches.steps(student).stream()
        .filter(each -> each.step().kind() == BakeStep.Kind.BAKE)
        .map(each -> each.step().fromHour())
        .toList();
  }

  /** The same day with a loaf in the oven each hour from 30 on, of the doughs named. */
  private static DayPlan loaded(DayPlan day, int[] doughs) {
    List<DayStep> steps =
        new ArrayList<>(
            day.steps().stream()
                .filter(each -> each.step().kind() != BakeStep.Kind.BAKE)
                .filter(each -> each.step().kind() != BakeStep.Kind.COOL)
                .toList());
    List<OvenLoad> loads = new ArrayList<>();
    for (int i = 0; i < doughs.length; i++) {
      OvenLoad.Portion one = new OvenLoad.Portion(doughs[i], i + 1, 1);
      loads.add(new OvenLoad(30 + i, 30.8 + i, List.of(one)));
      steps.add(step(BakeStep.Kind.BAKE, 30 + i, i + 1, doughs[i]));
      steps.add(step(BakeStep.Kind.COOL, 30.8 + i, i + 1, doughs[i]));
    }
    steps.sort(Comparator.comparingDouble(each -> each.step().fromHour()));
    return new DayPlan(day.plans(), steps, loads, day.hands(), day.loosening());
  }

  private static DayStep step(BakeStep.Kind kind, double hour, int number, int dough) {
    return new DayStep(new BakeStep(kind, hour, hour, number), List.of(dough), 0);
  }

  private static String plain(String text) {
    return text.replaceAll("[\\s\u00a0]+", " ");
  }
}
