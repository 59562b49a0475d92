package doughtide.report.type;

import doughtide.core.Internal;
import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/**
 * The two faces that come with the program (Liberation Sans 2.1.5, SIL Open Font License 1.1, its
 * text stands beside the font files). No font of the machine is ever asked for.
 *
 * <p>The font system of Java starts only when fontconfig answers; where it does not, it is given
 * the smallest configuration that lets it start, which suffices for fonts that are bundled.
 */
@Internal
public final class Fonts {

  public static final String FAMILY = "Liberation Sans";

  private static final String PLAIN_FILE = "/doughtide/report/fonts/LiberationSans-Regular.ttf";
  private static final String BOLD_FILE = "/doughtide/report/fonts/LiberationSans-Bold.ttf";

  /** Unscaled, so that widths do not depend on the device. */
  private static final FontRenderContext MEASURE = new FontRenderContext(null, true, true);

  private static final String NO_TEXT =
      "this Java cannot draw text: install its font libraries (on Debian: apt-get install"
          + " libfreetype6 fontconfig)";

  private Fonts() {}

  /** Loaded on first use. */
  private static final class Loaded {
    private static final Font PLAIN = load(PLAIN_FILE);
    private static final Font BOLD = load(BOLD_FILE);
  }

  public static Font plain(double sizePt) {
    return plainFace().deriveFont((float) sizePt);
  }

  public static Font bold(double sizePt) {
    return boldFace().deriveFont(Font.BOLD, (float) sizePt);
  }

  private static Font plainFace() {
    try {
      return Loaded.PLAIN;
    } catch (LinkageError e) {
      throw new ChartException(NO_TEXT, e);
    }
  }

  private static Font boldFace() {
    try {
      return Loaded.BOLD;
    } catch (LinkageError e) {
      throw new ChartException(NO_TEXT, e);
    }
  }

  public static InputStream plainFile() {
    return resource(PLAIN_FILE);
  }

  public static InputStream boldFile() {
    return resource(BOLD_FILE);
  }

  /** Width of the text as it is printed, in points. */
  public static double width(String text, Font font) {
    return font.getStringBounds(printable(text), MEASURE).getWidth();
  }

  /**
   * The text as it can be printed: line breaks and control characters become blanks, a character
   * that the font lacks is named by its number in Unicode, as in {@code [U+4E2D]}.
   */
  public static String printable(String text) {
    StringBuilder clean = new StringBuilder();
    spoken(text)
        .codePoints()
        .forEach(
            c -> {
              if (c == '\u2011') {
                clean.append('-');
              } else if (plainFace().canDisplay(c) && boldFace().canDisplay(c)) {
                clean.appendCodePoint(c);
              } else {
                clean.append(String.format(Locale.ROOT, "[U+%04X]", c));
              }
            });
    return clean.toString();
  }

  /** Whether the font has every character of a text. */
  public static boolean canPrint(String text) {
    return printable(text).equals(spoken(text).replace('\u2011', '-'));
  }

  /**
   * The text as it is read aloud or searched, which needs no font: control characters become
   * blanks, marks that only steer direction or joining are left out.
   */
  public static String spoken(String text) {
    StringBuilder clean = new StringBuilder();
    text.codePoints()
        .filter(c -> Character.getType(c) != Character.FORMAT)
        .map(c -> Character.isISOControl(c) || c == '\u2028' || c == '\u2029' ? ' ' : c)
        .forEach(clean::appendCodePoint);
    return clean.toString();
  }

  private static Font load(String file) {
    try {
      return create(file);
    } catch (LinkageError | RuntimeException | InternalError e) {
      return loadWithoutFontconfig(file);
    }
  }

  private static Font loadWithoutFontconfig(String file) {
    try {
      Path settings = Files.createTempFile("doughtide-fonts", ".properties");
      try {
        Files.writeString(settings, "version=1\nsequence.allfonts=default\n");
        System.setProperty("sun.awt.fontconfig", settings.toString());
        return create(file);
      } finally {
        System.clearProperty("sun.awt.fontconfig");
        Files.deleteIfExists(settings);
      }
    } catch (IOException | LinkageError | RuntimeException | InternalError e) {
      throw new ChartException(NO_TEXT, e);
    }
  }

  private static Font create(String file) {
    try (InputStream in = resource(file)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (FontFormatException e) {
      throw new IllegalStateException("the bundled font " + file + " is damaged", e);
    }
  }

  private static InputStream resource(String file) {
    InputStream in = Fonts.class.getResourceAsStream(file);
    if (in == null) {
      throw new IllegalStateException("the font " + file + " is missing from the program");
    }
    return in;
  }
}
