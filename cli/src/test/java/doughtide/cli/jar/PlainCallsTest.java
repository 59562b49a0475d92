package doughtide.cli.jar;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PlainCallsTest {

  private static final FileTime TIME = FileTime.from(Instant.parse("2027-03-06T09:30:00Z"));
  private static final String SAMPLE = Sample.class.getName().replace('.', '/');

  /** Uses lambdas of every kind. */
  public static final class Sample implements Supplier<List<Object>> {

    private final int seed = 40;

    /** A lambda of an interface, which calls what is private there. */
    interface Named {
      String name();

      default Supplier<String> greeting() {
        return () -> hello() + name();
      }

      private String hello() {
        return "hello ";
      }
    }

    record Point(long x, String y) {}

    @Override
    public List<Object> get() {
      long wide = 1;
      AtomicInteger counted = new AtomicInteger();
      IntPredicate isEven = i -> i % 2 == 0;
      IntFunction<String[]> array = String[]::new;
      BiFunction<Long, String, Point> make = Point::new;
      Function<Integer, Long> widened = i -> i + wide + seed;
      ToDoubleFunction<Integer> number = Integer::intValue;
      ToIntFunction<Character> code = Character::getNumericValue;
      Predicate<String> isLong = String::isEmpty;
      Runnable count = counted::incrementAndGet;
      Named named = () -> "dough";
      count.run();
      return List.of(
          isEven.test(4),
          array.apply(3).length,
          make.apply(2L, "y").toString(),
          widened.apply(1),
          number.applyAsDouble(7),
          code.applyAsInt('8'),
          isLong.negate().test(""),
          counted.get(),
          named.greeting().get(),
          new Inner().secret.get());
    }

    private String secret() {
      return "secret " + seed;
    }

    private final class Inner {
      private final Supplier<String> secret = Sample.this::secret;
    }
  }

  /** A record of every kind of component. */
  public record Parts(
      boolean truth,
      char sign,
      byte small,
      short shorter,
      int whole,
      long wide,
      float single,
      double number,
      String text,
      List<String> list) {}

  private static List<Parts> parts() {
    Parts first = new Parts(true, 'a', (byte) 1, (short) 2, 3, 4, 5, Double.NaN, "six", List.of());
    return List.of(
        first,
        new Parts(false, 'a', (byte) 1, (short) 2, 3, 4, 5, Double.NaN, "six", List.of()),
        new Parts(true, 'b', (byte) 1, (short) 2, 3, 4, 5, Double.NaN, "six", List.of()),
        new Parts(true, 'a', (byte) 2, (short) 2, 3, 4, 5, Double.NaN, "six", List.of()),
        new Parts(true, 'a', (byte) 1, (short) 3, 3, 4, 5, Double.NaN, "six", List.of()),
        new Parts(true, 'a', (byte) 1, (short) 2, 4, 4, 5, Double.NaN, "six", List.of()),
        new Parts(true, 'a', (byte) 1, (short) 2, 3, 1L << 40, 5, Double.NaN, "six", List.of()),
        new Parts(true, 'a', (byte) 1, (short) 2, 3, 4, -0f, Double.NaN, "six", List.of()),
        new Parts(true, 'a', (byte) 1, (short) 2, 3, 4, 5, 1e300, "six", List.of()),
        new Parts(true, 'a', (byte) 1, (short) 2, 3, 4, 5, Double.NaN, null, List.of()),
        new Parts(true, 'a', (byte) 1, (short) 2, 3, 4, 5, Double.NaN, "six", List.of("seven")),
        new Parts(true, 'a', (byte) 1, (short) 2, 3, 4, 5, Double.NaN, "six", List.of()));
  }

  /** Compares records with each other and tells their hashes. */
  public static final class Comparing implements Supplier<List<Object>> {
    @Override
    public List<Object> get() {
      List<Object> told = new ArrayList<>();
      for (Parts each : parts()) {
        told.add(each.hashCode());
        told.add(each.toString());
        told.add(each.equals("text"));
        parts().forEach(other -> told.add(each.equals(other)));
      }
      return told;
    }
  }

  @Test
  void lambdasDoTheSameAsPlainClasses() throws Exception {
    assertThat(rewritten(Sample.class).get()).isEqualTo(new Sample().get());
  }

  @Test
  void recordsAreComparedAsBefore() throws Exception {
    assertThat(rewritten(Comparing.class).get()).isEqualTo(new Comparing().get());
  }

  @Test
  void nothingIsLeftToBeLinkedLater() throws Exception {
    assertThat(text(before(), SAMPLE)).contains("LambdaMetafactory");
    assertThat(text(PlainCalls.rewrite(List.copyOf(before().values())), SAMPLE))
        .doesNotContain("LambdaMetafactory");
  }

  /** Two builds of the same sources give the same jar. */
  @Test
  void whatIsWrittenHasTheTimesOfTheManifest(@TempDir Path folder) throws Exception {
    Path jar = folder.resolve("some.jar");
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(jar))) {
      out.putNextEntry(new ZipEntry(JarFile.MANIFEST_NAME).setLastModifiedTime(TIME));
      for (Map.Entry<String, byte[]> each : before().entrySet()) {
        out.putNextEntry(new ZipEntry(each.getKey() + ".class"));
        out.write(each.getValue());
      }
    }
    PlainCalls.main(new String[] {jar.toString()});
    try (FileSystem rewritten = FileSystems.newFileSystem(jar)) {
      Path made = rewritten.getPath(SAMPLE + "$$L1.class");
      BasicFileAttributes times = Files.readAttributes(made, BasicFileAttributes.class);
      assertThat(List.of(times.lastModifiedTime(), times.lastAccessTime(), times.creationTime()))
          .containsOnly(TIME);
    }
  }

  private static Map<String, byte[]> before() throws IOException {
    Map<String, byte[]> classes = new HashMap<>();
    for (Class<?> each : PlainCallsTest.class.getNestMembers()) {
      classes.put(each.getName().replace('.', '/'), bytes(each));
    }
    return classes;
  }

  private static Supplier<?> rewritten(Class<?> type) throws Exception {
    Map<String, byte[]> classes = before();
    classes.putAll(PlainCalls.rewrite(List.copyOf(classes.values())));
    Class<?> again = new Loader(classes).loadClass(type.getName());
    return (Supplier<?>) again.getDeclaredConstructor().newInstance();
  }

  private static String text(Map<String, byte[]> classes, String name) {
    return new String(classes.get(name), ISO_8859_1);
  }

  private static byte[] bytes(Class<?> type) throws IOException {
    String name = "/" + type.getName().replace('.', '/') + ".class";
    try (InputStream in = type.getResourceAsStream(name)) {
      return in.readAllBytes();
    }
  }

  /** Knows the rewritten classes before those of the tests. */
  private static final class Loader extends ClassLoader {

    private final Map<String, byte[]> classes;

    Loader(Map<String, byte[]> classes) {
      super(PlainCallsTest.class.getClassLoader());
      this.classes = classes;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      byte[] own = classes.get(name.replace('.', '/'));
      Class<?> known = findLoadedClass(name);
      if (own == null || known != null) {
        return known == null ? super.loadClass(name, resolve) : known;
      }
      return defineClass(name, own, 0, own.length);
    }
  }
}
