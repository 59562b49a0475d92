package doughtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import doughtide.report.chart.ChartFormat;
import doughtide.report.chart.ChartOutput;
import doughtide.report.chart.ChartSize;
import doughtide.report.chart.RiseChart;
import doughtide.report.chart.RiseChartData;
import doughtide.report.page.Page;
import doughtide.report.page.PageFormat;
import doughtide.report.words.Language;
import doughtide.report.words.Words;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Test;

class ApprovedPicturesTest {

  private static final Words WORDS = Words.in(Language.ENGLISH);
  private static final float DOTS_PER_INCH = 72;

  @Test
  void chartsLookAsApproved() throws IOException {
    Map<String, RiseChartData> charts =
        Map.of(
            "rise",
            Samples.plain(),
            "rise-clock",
            Samples.withClock(),
            "rise-cold",
            Samples.cold());
    Map<String, BufferedImage> pictures = new TreeMap<>();
    for (Map.Entry<String, RiseChartData> chart : charts.entrySet()) {
      RiseChartData data = chart.getValue();
      byte[] pdf =
          ChartOutput.bytes(
              RiseChart.of(data, WORDS),
              ChartFormat.PDF,
              ChartSize.A5_LANDSCAPE,
              RiseChart.caption(data, WORDS));
      pictures.put(chart.getKey(), rendered(pdf, 0));
    }
    ApprovedPictures.assertApproved(pictures);
  }

  @Test
  void pagesLookAsApproved() throws IOException {
    Map<String, BufferedImage> pictures = new TreeMap<>();
    for (Map.Entry<String, List<Page>> entry : Samples.pages(PageFormat.a4(), WORDS).entrySet()) {
      pictures.put("page-" + entry.getKey(), rendered(Page.together(entry.getValue()), 0));
    }
    ApprovedPictures.assertApproved(pictures);
  }

  @Test
  void missingLabelIsNoticed() throws IOException {
    BufferedImage page =
        rendered(Page.together(Samples.pages(PageFormat.a4(), WORDS).get("why")), 0);
    BufferedImage touched = new BufferedImage(page.getWidth(), page.getHeight(), page.getType());
    Graphics2D graphics = touched.createGraphics();
    graphics.drawImage(page, 0, 0, null);
    graphics.setColor(Color.WHITE);
    graphics.fillRect(40, 40, 110, 25);
    graphics.dispose();
    assertThat(ApprovedPictures.difference(page, page)).isZero();
    assertThat(ApprovedPictures.difference(page, touched)).isGreaterThan(0.002);
  }

  private static BufferedImage rendered(byte[] pdf, int page) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      BufferedImage seen =
          new PDFRenderer(document).renderImageWithDPI(page, DOTS_PER_INCH, ImageType.RGB);
      assertThat(SimulatedSight.changing(seen)).isEmpty();
      return seen;
    }
  }
}
