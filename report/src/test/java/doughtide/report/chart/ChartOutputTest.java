package doughtide.report.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import doughtide.core.quantity.InputException;
import doughtide.report.Samples;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.PDXObject;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ChartOutputTest {

  private static final Words WORDS = Words.in(Language.GERMAN);

  private static byte[] bytes(ChartFormat format, ChartSize size) {
    RiseChartData data = Samples.cold();
    return ChartOutput.bytes(
        RiseChart.of(data, WORDS), format, size, RiseChart.caption(data, WORDS));
  }

  @ParameterizedTest
  @EnumSource
  void pdfHasTheSizeTextFontsTitleAndLanguage(ChartSize size) throws IOException {
    try (PDDocument document = Loader.loadPDF(bytes(ChartFormat.PDF, size))) {
      assertThat(document.getNumberOfPages()).isEqualTo(1);
      PDPage page = document.getPage(0);
      assertThat(page.getMediaBox().getWidth()).isEqualTo(size.widthPt());
      assertThat(page.getMediaBox().getHeight()).isEqualTo(size.heightPt());
      assertThat(new PDFTextStripper().getText(document))
          .contains(
              "Tidemill kitchen country dough", "Stunden nach dem Mischen", "×2,00", "zu früh")
          .contains("wahrscheinlich");
      assertThat(document.getDocumentCatalog().getLanguage()).isEqualTo("de");
      assertThat(document.getDocumentInformation().getTitle())
          .isEqualTo("Tidemill kitchen country dough");
      assertThat(document.getDocumentCatalog().getMarkInfo().isMarked()).isTrue();
      assertFontsEmbedded(page.getResources());
    }
  }

  private static void assertFontsEmbedded(PDResources resources) throws IOException {
    int fonts = 0;
    for (COSName name : resources.getXObjectNames()) {
      PDXObject object = resources.getXObject(name);
      PDResources inside = ((PDFormXObject) object).getResources();
      for (COSName fontName : inside.getFontNames()) {
        PDFont font = inside.getFont(fontName);
        assertThat(font.isEmbedded()).as(font.getName()).isTrue();
        fonts++;
      }
    }
    assertThat(fonts).isPositive();
  }

  @Test
  void svgKeepsWordsAsTextWithAFallbackFamily() {
    String svg = new String(bytes(ChartFormat.SVG, ChartSize.A5_LANDSCAPE), StandardCharsets.UTF_8);
    assertThat(svg)
        .contains("<text")
        .contains("Stunden nach dem Mischen")
        .contains("'Liberation Sans',Arial,Helvetica,'Nimbus Sans',sans-serif")
        .contains("209.90mm");
  }

  @Test
  void pngIsAsLargeAsTheSheetAndNotBlank() throws IOException {
    BufferedImage image =
        ImageIO.read(new ByteArrayInputStream(bytes(ChartFormat.PNG, ChartSize.A5_LANDSCAPE)));
    assertThat(image.getWidth()).isEqualTo(Math.round(595 * 300 / 72.0));
    int dark = 0;
    for (int x = 0; x < image.getWidth(); x++) {
      for (int y = 0; y < image.getHeight(); y++) {
        if ((image.getRGB(x, y) & 0xFF) < 64) {
          dark++;
        }
      }
    }
    assertThat((double) dark / image.getWidth() / image.getHeight()).isBetween(0.005, 0.2);
  }

  @ParameterizedTest
  @EnumSource
  void sameInputGivesTheSameBytes(ChartFormat format) {
    assertThat(bytes(format, ChartSize.A5_PORTRAIT))
        .isEqualTo(bytes(format, ChartSize.A5_PORTRAIT));
  }

  @Test
  void namesOfFloursAreNeverMarkup() {
    RiseChartData plain = Samples.plain();
    RiseChartData data =
        RiseChartData.of(
                plain.hours(), plain.earlyPercent(), plain.likelyPercent(), plain.latePercent())
            .title("<b>Fenside & rye</b> {time} \u4e2d\u0007")
            .build();
    byte[] svg =
        ChartOutput.bytes(
            RiseChart.of(data, WORDS),
            ChartFormat.SVG,
            ChartSize.A5_LANDSCAPE,
            RiseChart.caption(data, WORDS));
    assertThat(new String(svg, StandardCharsets.UTF_8))
        .contains("&lt;b&gt;Fenside &amp; rye&lt;/b&gt; {time} \u4e2d ")
        .contains("&lt;b&gt;Fenside &amp; rye&lt;/b&gt; {time} [U+4E2D]");
  }

  @Test
  void fileEndingDecidesTheFormat() {
    assertThat(ChartFormat.ofFileName("loaf.PDF")).isEqualTo(ChartFormat.PDF);
    assertThat(ChartFormat.ofFileName("my loaf.svg")).isEqualTo(ChartFormat.SVG);
    assertThatThrownBy(() -> ChartFormat.ofFileName("loaf.jpg"))
        .isInstanceOf(InputException.class)
        .hasMessageContaining("use .pdf, .svg or .png");
  }
}
