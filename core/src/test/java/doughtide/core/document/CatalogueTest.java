package doughtide.core.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import org.junit.jupiter.api.Test;
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
        "80% white, 20% rye | 80 % white, 20 % rye",
        "80 % white; 20 % rye | 80 % white, 20 % rye",
        "80% white + 20% rye | 80 % white, 20 % rye",
        "white 400g, rye 100g | 80 % white, 20 % rye",
        "1,2 kg white, 300 g of rye | 80 % white, 20 % rye",
        "white: 400 g; rye: 100 g | 80 % white, 20 % rye",
        "white 16oz, rye 4oz | 80 % white, 20 % rye",
        "500g white | white",
        "white 400, rye 100 | 80 % white, 20 % rye",
        "80% white and 20% rye | 80 % white, 20 % rye",
        "white 80% und rye 20% | 80 % white, 20 % rye",
      })
  void isReadInAnySpelling(String text, String name) {
    assertThat(Catalogue.standard().flour("--flour", text).name()).isEqualTo(name);
  }

  @Test
  void sharesAndMassesTogetherAreRefused() {
    assertThatThrownBy(() -> Catalogue.standard().flour("--flour", "white 400g, rye 20%"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("all in per cent or all in grams");
  }
}
