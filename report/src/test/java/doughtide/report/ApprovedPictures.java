package doughtide.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import javax.imageio.ImageIO;

/**
 * Compares pictures with the approved ones in {@code testdata/approved}. Compared are means of
 * small squares, so that another rasteriser does not matter but a moved or missing label does. A
 * picture that differs is left in {@code target/received}; look at it, and copy it over if it is
 * right.
 */
final class ApprovedPictures {

  private static final int SQUARE = 6;

  /** Of 255 grey levels, per square; a label that is missing changes its squares by 40 and more. */
  private static final int LEVELS = 24;

  /** Share of the squares that may differ more. */
  private static final double SHARE = 0.002;

  private ApprovedPictures() {}

  /** All pictures are left in {@code target/received} before the first is compared. */
  static void assertApproved(Map<String, BufferedImage> pictures) throws IOException {
    Path received = Path.of("target", "received");
    Files.createDirectories(received);
    for (Map.Entry<String, BufferedImage> picture : pictures.entrySet()) {
      ImageIO.write(
          picture.getValue(), "png", received.resolve(picture.getKey() + ".png").toFile());
    }
    for (Map.Entry<String, BufferedImage> picture : pictures.entrySet()) {
      assertApproved(picture.getKey(), picture.getValue());
    }
  }

  private static void assertApproved(String name, BufferedImage picture) throws IOException {
    Path approved = Path.of(System.getProperty("doughtide.testdata"), "approved", name + ".png");
    assertThat(approved).as("look at target/received and approve").exists();
    assertThat(difference(ImageIO.read(approved.toFile()), picture))
        .as("share of squares in which target/received/%s.png differs from the approved", name)
        .isLessThan(SHARE);
  }

  /** Share of the squares whose mean grey differs by more than the tolerance. */
  static double difference(BufferedImage one, BufferedImage other) {
    if (one.getWidth() != other.getWidth() || one.getHeight() != other.getHeight()) {
      return 1;
    }
    int[][] first = squares(one);
    int[][] second = squares(other);
    int differing = 0;
    int all = 0;
    for (int y = 0; y < first.length; y++) {
      for (int x = 0; x < first[y].length; x++) {
        differing += Math.abs(first[y][x] - second[y][x]) > LEVELS ? 1 : 0;
        all++;
      }
    }
    return (double) differing / all;
  }

  private static int[][] squares(BufferedImage image) {
    BufferedImage grey =
        new BufferedImage(image.getWidth(), image.getHeight(), BufferedImage.TYPE_INT_RGB);
    Graphics2D graphics = grey.createGraphics();
    graphics.setColor(Color.WHITE);
    graphics.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
    graphics.drawImage(image, 0, 0, Color.WHITE, null);
    graphics.dispose();
    int[][] means = new int[image.getHeight() / SQUARE][image.getWidth() / SQUARE];
    for (int y = 0; y < means.length; y++) {
      for (int x = 0; x < means[y].length; x++) {
        means[y][x] = mean(grey, x * SQUARE, y * SQUARE);
      }
    }
    return means;
  }

  private static int mean(BufferedImage image, int left, int top) {
    int sum = 0;
    for (int y = top; y < top + SQUARE; y++) {
      for (int x = left; x < left + SQUARE; x++) {
        sum += image.getRGB(x, y) & 0xFF;
      }
    }
    return sum / (SQUARE * SQUARE);
  }
}
