package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CatalogueTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "white | white",
        "Strong-White | strong white",
        "white:80%,wholemeal wheat:20% | 80 % white, 20 % wholemeal wheat",
        "white : 87,5 %, rye : 12,5 % | 87.5 % white, 12.5 % rye",
        "rye:100% | rye",
        "white 80%, rye 20% | 80 % white, 20 % rye",
        "rye:50%,rye:50% | rye",
      })
  void isReadInAnySpelling(String text, String name) {
    assertThat(Catalogue.standard().flour("--flour", text).name()).isEqualTo(name);
  }
}
