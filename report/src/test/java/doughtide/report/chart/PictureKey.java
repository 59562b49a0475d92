package doughtide.report.chart;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Which marks of a picture are neither named beside them nor in its English key. */
public final class PictureKey {
  private final ChartPicture picture;
  private final String key;

  private PictureKey(ChartPicture picture, String around) {
    this.picture = picture;
    this.key = (around + " " + String.join(" ", picture.notes())).toLowerCase(Locale.ENGLISH);
  }

  static List<String> missing(PrintedChart chart) {
    return missing(chart, "");
  }

  /**
   * The same where a page may say it, too.
   *
   * @param around the text of the page
   */
  public static List<String> missing(PrintedChart chart, String around) {
    return new PictureKey(chart.picture(), around).missing();
  }

  private List<String> missing() {
    return Stream.of(areas(), lines(), points(), rows()).flatMap(each -> each).distinct().toList();
  }

  private Stream<String> areas() {
    return Stream.concat(
        picture.bands().stream().flatMap(band -> unlessSaid(fill(band.fill()))),
        picture.zones().stream().flatMap(zone -> unlessSaid("slanted lines")));
  }

  private static String fill(ChartPicture.Fill fill) {
    return switch (fill) {
      case DOTTED, GREY -> "grey";
      case WHITE -> "white";
      case BLACK -> "black";
      case COLD -> "slanted lines";
    };
  }

  private Stream<String> lines() {
    return Stream.of(
            picture.curves().stream().flatMap(this::curve),
            picture.uprights().stream().flatMap(this::upright),
            picture.bench().stream().flatMap(bench -> unlessSaid("thick line at the top")),
            picture.x().squeeze().stream().flatMap(night -> unlessSaid("slanted strokes")))
        .flatMap(each -> each);
  }

  private Stream<String> curve(ChartPicture.Curve curve) {
    if (curve.named()) {
      return named(curve.name(), "a line");
    }
    if (curve.pen() == ChartPicture.Pen.BOLD) {
      return unlessSaid("bold line");
    }
    boolean isTitled = picture.curves().size() == 1 && !picture.title().isBlank();
    return isTitled ? Stream.empty() : Stream.of("a line without a name: " + curve.name());
  }

  private Stream<String> upright(ChartPicture.Upright upright) {
    return upright.kind() == ChartPicture.Upright.Kind.MIDNIGHT
        ? unlessSaid("thin upright line: midnight")
        : named(upright.label(), "an upright line");
  }

  private Stream<String> points() {
    return Stream.of(
            picture.spans().stream().flatMap(span -> unlessSaid("ring")),
            picture.lanes().stream().flatMap(lane -> unlessSaid("diamond and bar")),
            picture.marks().stream().flatMap(mark -> unlessSaid("diamond")),
            picture.dots().stream().flatMap(dot -> unlessSaid("cross")))
        .flatMap(each -> each);
  }

  private Stream<String> rows() {
    return Stream.of(
            picture.ribbon().stream()
                .flatMap(row -> row.stages().stream())
                .flatMap(stage -> named(stage.label(), "a stage")),
            picture.twenty().stream().flatMap(row -> unlessSaid("each dot")),
            picture.twenty().stream()
                .filter(row -> row.laterOrNever() > 0)
                .flatMap(row -> unlessSaid("hollow dots")),
            picture.strip().stream().flatMap(strip -> named(strip.title(), "the strip")))
        .flatMap(each -> each);
  }

  private Stream<String> unlessSaid(String mark) {
    return key.contains(mark) ? Stream.empty() : Stream.of("the key lacks: " + mark);
  }

  private static Stream<String> named(String name, String what) {
    return name.isBlank() ? Stream.of(what + " without a name") : Stream.empty();
  }
}
