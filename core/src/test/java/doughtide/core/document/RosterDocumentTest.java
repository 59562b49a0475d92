package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.dough.Flour;
import doughtide.core.dough.FlourClass;
import doughtide.core.quantity.InputException;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RosterDocumentTest {

  private static RosterDocument read(String text) {
    return RosterDocument.read(text.lines().iterator(), Catalogue.standard());
  }

  @Test
  void readsStudentsAndWhatTheHeadSaysOfAll() {
    RosterDocument roster =
        read(
            """
            # invented
            class: Quayside bread class
            language: de
            flour: white
            note: bring aprons

            name;dough;flour;loaves;language
            Ann;country;white 80%, rye 20%;2;fr
            Bo;rye;;1;
            "Cy; the second";;;;EN
            """);

    assertThat(roster.className()).contains("Quayside bread class");
    assertThat(roster.entries()).extracting(RosterEntry::name).contains("Ann", "Cy; the second");
    RosterEntry ann = roster.entries().get(0);
    assertThat(ann.dough()).isEqualTo("country");
    assertThat(ann.flour().map(Flour::name)).contains("80 % white, 20 % rye");
    assertThat(ann.loaves()).isEqualTo(2);
    assertThat(ann.language()).contains("fr");
    RosterEntry bo = roster.entries().get(1);
    assertThat(bo.flour()).contains(FlourClass.WHITE.flour());
    assertThat(bo.language()).contains("de");
    assertThat(roster.entries().get(2).dough()).isEqualTo(RosterDocument.USUAL_DOUGH);
    assertThat(roster.entries().get(2).language()).contains("en");
    assertThat(roster.loaves()).isEqualTo(4);
  }

  @Test
  void columnsMayComeInAnyOrderAndWithCommas() {
    RosterDocument roster = read("loaves,name,flour\n3,Ann,\"white 80%, rye 20%\"\n,Bo,rye");

    assertThat(roster.entries()).extracting(RosterEntry::loaves).containsExactly(3, 1);
    assertThat(roster.entries().get(1).flour().map(Flour::name)).contains("rye");
    assertThat(roster.entries().get(1).language()).isEmpty();
  }

  @Test
  void aNameIsKeptAsItIs() {
    RosterDocument roster = read("name\n<b>Ann</b> & =1+1");

    assertThat(roster.entries().get(0).name()).isEqualTo("<b>Ann</b> & =1+1");
  }

  @Test
  void isReadBackFromItsText() {
    RosterDocument roster =
        read(
            "class: A; \"B\"\nname;flour;loaves;language\n\"A;n\"\"n\";white:80%,rye:20%;2;es\nBo");

    assertThat(read(roster.text())).isEqualTo(roster);
  }

  @Test
  void namesTheLineThatCannotBeUsed() {
    refuses("", "there is no table: it begins with a line such as 'name;dough;flour");
    refuses("name;dough", "a roster has 1 to 200 students, this one has 0");
    refuses("name;colour\nAnn;red", "line 1: the column 'colour' is not known: the columns are");
    refuses("name;name\nAnn;Bo", "line 1: the column 'name' stands there twice");
    refuses("name;loaves\nAnn;0", "line 2: loaves 0 is outside 1…50");
    refuses("name;loaves\nAnn;two", "line 2: loaves two is not a whole number");
    refuses("name;flour\nAnn;sand", "line 2: flour sand is no flour known here");
    refuses("name;loaves\n;2", "line 2: the name of a student must have 1 to 40 characters");
    refuses("name\nA\u202En", "line 2: the name of a student must have 1 to 40 characters");
    refuses("name;language\nAnn;english", "line 2: 'english' is no language");
    refuses("name\nAnn\nBo\nAnn", "line 4: the name 'Ann' stands there twice");
    refuses("name\nAnn,2", "line 2: the line has more cells than the heading");
    refuses("loaves: 99\nname\nAnn", "line 1: loaves 99 is outside 1…50");
  }

  private static void refuses(String text, String sentence) {
    assertThatThrownBy(() -> read(text))
        .isInstanceOf(InputException.class)
        .hasMessageContaining(sentence);
  }

  @Test
  void aStudentIsChecked() {
    assertThatThrownBy(() -> new RosterEntry("Ann", " ", Optional.empty(), 1, Optional.empty()))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("the dough of a student");
  }
}
