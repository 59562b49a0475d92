package doughtide.report;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Colours as people see them who lack one kind of cone. Matrices over linear RGB for a full loss,
 * by Machado, Oliveira and Fernandes, "A Physiologically-based Model for Simulation of Color Vision
 * Deficiency", IEEE Transactions on Visualization and Computer Graphics 15 (6), 2009; the figures
 * are from memory.
 */
public enum SimulatedSight {
  /** All three kinds. */
  USUAL(1, 0, 0, 0, 1, 0, 0, 0, 1),
  PROTANOPIA(
      0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998),
  DEUTERANOPIA(
      0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881),
  TRITANOPIA(
      1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900);

  private static final int LEVELS = 3;

  private final double[] matrix;

  SimulatedSight(double... matrix) {
    this.matrix = matrix;
  }

  /** A colour as it is seen, linear red, green and blue from 0 to 1. */
  private double[] seen(Color colour) {
    double[] linear = {
      linear(colour.getRed()), linear(colour.getGreen()), linear(colour.getBlue())
    };
    double[] seen = new double[3];
    for (int i = 0; i < 3; i++) {
      double sum = 0;
      for (int j = 0; j < 3; j++) {
        sum += matrix[3 * i + j] * linear[j];
      }
      seen[i] = Math.max(0, Math.min(1, sum));
    }
    return seen;
  }

  /** As sRGB (IEC 61966-2-1) has it. */
  private static double linear(int level) {
    double part = level / 255.0;
    return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
  }

  private static double level(double linear) {
    return 255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055);
  }

  /** Contrast of two colours as they are seen, 1 to 21, as WCAG 2.2 defines it. */
  public double contrast(Color one, Color other) {
    double first = luminance(seen(one));
    double second = luminance(seen(other));
    return (Math.max(first, second) + 0.05) / (Math.min(first, second) + 0.05);
  }

  private static double luminance(double[] linear) {
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
  }

  /**
   * The colours of a picture that somebody sees as others than they are; none in shades of grey.
   */
  public static List<String> changing(BufferedImage picture) {
    return IntStream.range(0, picture.getHeight())
        .flatMap(y -> IntStream.range(0, picture.getWidth()).map(x -> picture.getRGB(x, y)))
        .distinct()
        .mapToObj(Color::new)
        .flatMap(
            colour ->
                Stream.of(values())
                    .filter(sight -> sight.changes(colour))
                    .map(sight -> sight + " " + colour))
        .toList();
  }

  private boolean changes(Color colour) {
    double[] seen = seen(colour);
    return Math.abs(level(seen[0]) - colour.getRed()) > LEVELS
        || Math.abs(level(seen[1]) - colour.getGreen()) > LEVELS
        || Math.abs(level(seen[2]) - colour.getBlue()) > LEVELS;
  }
}
