package doughtide.report.chart;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/** Pixel picture in grey, with the resolution written into the file. */
record PngChartWriter(int dotsPerInch) implements ChartWriter {

  @Override
  public byte[] write(PrintedChart chart, ChartSize size, ChartCaption caption) {
    BufferedImage image = image(chart, size);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), null);
      metadata.mergeTree("javax_imageio_png_1.0", resolution());
      writer.write(new IIOImage(image, null, metadata));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }

  BufferedImage image(PrintedChart chart, ChartSize size) {
    double scale = dotsPerInch / 72.0;
    BufferedImage image =
        new BufferedImage(
            (int) Math.round(size.widthPt() * scale),
            (int) Math.round(size.heightPt() * scale),
            BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D graphics = image.createGraphics();
    try {
      graphics.setColor(java.awt.Color.WHITE);
      graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
      graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
      graphics.setRenderingHint(
          RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
      graphics.scale(scale, scale);
      chart.paint(graphics, size.widthPt(), size.heightPt());
    } finally {
      graphics.dispose();
    }
    return image;
  }

  private IIOMetadataNode resolution() throws IIOInvalidTreeException {
    String perMetre = Long.toString(Math.round(dotsPerInch / 0.0254));
    IIOMetadataNode physical = new IIOMetadataNode("pHYs");
    physical.setAttribute("pixelsPerUnitXAxis", perMetre);
    physical.setAttribute("pixelsPerUnitYAxis", perMetre);
    physical.setAttribute("unitSpecifier", "meter");
    IIOMetadataNode root = new IIOMetadataNode("javax_imageio_png_1.0");
    root.appendChild(physical);
    return root;
  }
}
