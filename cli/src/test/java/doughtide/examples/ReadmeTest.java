package doughtide.examples;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.tools.JavaCompiler;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Compiles and runs the Java program that stands in the README. */
class ReadmeTest {
  private static final Pattern SNIPPET = Pattern.compile("```java\n(.*?)```", Pattern.DOTALL);

  private static String readme() throws IOException {
    Path root = Path.of(System.getProperty("doughtide.testdata")).getParent();
    return Files.readString(root.resolve("README.md"));
  }

  @Test
  void programCompilesAndAnswers(@TempDir Path folder) throws Exception {
    Matcher snippet = SNIPPET.matcher(readme());
    assertThat(snippet.find()).isTrue();
    String code = snippet.group(1);
    int body = code.lastIndexOf("import ");
    int afterImports = code.indexOf('\n', body) + 1;
    String source =
        code.substring(0, afterImports)
            + "public class Snippet { public static void main(String[] args) {\n"
            + code.substring(afterImports)
            + "}}\n";
    Path file = Files.writeString(folder.resolve("Snippet.java"), source);

    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    ByteArrayOutputStream complaints = new ByteArrayOutputStream();
    int result =
        compiler.run(
            null,
            complaints,
            complaints,
            "-classpath",
            System.getProperty("java.class.path"),
            "-proc:none",
            "-d",
            folder.toString(),
            file.toString());
    assertThat(result).as(complaints.toString(StandardCharsets.UTF_8)).isZero();
    assertThat(run(folder)).matches("3[.,]4 to 6[.,]7 hours\\R");
  }

  private static String run(Path folder) throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream before = System.out;
    try (URLClassLoader loader = new URLClassLoader(new URL[] {folder.toUri().toURL()})) {
      System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
      loader
          .loadClass("Snippet")
          .getMethod("main", String[].class)
          .invoke(null, (Object) new String[0]);
    } finally {
      System.setOut(before);
    }
    return out.toString(StandardCharsets.UTF_8);
  }
}
