package doughtide.cli.jar;

import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributeView;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;

/**
 * Turns the lambdas of the program's own classes into plain classes, and what compares its records
 * into plain methods. Java makes a lambda's class when it is first come by; before version 24 that
 * takes a tenth of a millisecond each even where an archive holds the class, a fifth of a short
 * call in all. The first record that is compared takes twenty milliseconds. A plain class of the
 * archive costs next to nothing. Lambdas that can be serialized stay as they are.
 */
public final class PlainCalls {

  private static final String OWN = "/doughtide";
  private static final String LAMBDAS = "java/lang/invoke/LambdaMetafactory";
  private static final String RECORDS = "java/lang/runtime/ObjectMethods";

  private final Map<String, byte[]> before = new LinkedHashMap<>();
  private final Map<String, byte[]> after = new LinkedHashMap<>();
  private final Map<String, List<String>> membersByHost = new LinkedHashMap<>();

  private PlainCalls() {}

  /**
   * Rewrites a jar.
   *
   * @param args the file
   */
  public static void main(String[] args) throws IOException {
    try (FileSystem jar = FileSystems.newFileSystem(Path.of(args[0]))) {
      Path root = jar.getPath("/");
      Map<String, byte[]> rewritten = rewrite(classes(jar.getPath(OWN)));
      FileTime time = Files.getLastModifiedTime(jar.getPath("/META-INF/MANIFEST.MF"));
      for (Map.Entry<String, byte[]> each : rewritten.entrySet()) {
        Path file = root.resolve(each.getKey() + ".class");
        Files.write(file, each.getValue());
        Files.getFileAttributeView(file, BasicFileAttributeView.class).setTimes(time, time, time);
      }
    }
  }

  private static List<byte[]> classes(Path folder) throws IOException {
    List<byte[]> classes = new ArrayList<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : (Iterable<Path>) files.sorted()::iterator) {
        if (file.toString().endsWith(".class")) {
          classes.add(Files.readAllBytes(file));
        }
      }
    }
    return classes;
  }

  /**
   * Rewrites classes; all members of a nest must be among them.
   *
   * @return what has changed or is new, by name
   */
  static Map<String, byte[]> rewrite(List<byte[]> classes) {
    PlainCalls all = new PlainCalls();
    classes.forEach(all::rewrite);
    all.membersByHost.forEach(all::join);
    return all.after;
  }

  private void rewrite(byte[] bytes) {
    ClassReader reader = new ClassReader(bytes);
    ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
    Rewriting rewriting = new Rewriting(reader.getClassName(), writer);
    reader.accept(rewriting, 0);
    before.put(reader.getClassName(), bytes);
    if (!rewriting.ofRecord.isEmpty()) {
      after.put(reader.getClassName(), writer.toByteArray());
    }
    if (!rewriting.made.isEmpty()) {
      after.put(reader.getClassName(), writer.toByteArray());
      after.putAll(rewriting.made);
      membersByHost
          .computeIfAbsent(rewriting.host, host -> new ArrayList<>())
          .addAll(rewriting.made.keySet());
    }
  }

  /** The host of a nest names its members, so that they may use what is private in it. */
  private void join(String host, List<String> members) {
    ClassReader reader = new ClassReader(after.getOrDefault(host, before.get(host)));
    ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);
    reader.accept(
        new ClassVisitor(Opcodes.ASM9, writer) {
          @Override
          public void visitEnd() {
            members.forEach(this::visitNestMember);
            super.visitEnd();
          }
        },
        0);
    after.put(host, writer.toByteArray());
  }

  /** One class, whose lambdas are made on the way. */
  private static final class Rewriting extends ClassVisitor {

    private final Map<String, byte[]> made = new LinkedHashMap<>();
    private final List<RecordMethod> ofRecord = new ArrayList<>();
    private final String name;
    private String host;

    Rewriting(String name, ClassVisitor to) {
      super(Opcodes.ASM9, to);
      this.name = name;
      this.host = name;
    }

    @Override
    public void visitNestHost(String nestHost) {
      host = nestHost;
      super.visitNestHost(nestHost);
    }

    @Override
    public void visitEnd() {
      ofRecord.forEach(each -> each.write(cv));
      super.visitEnd();
    }

    /** What stands behind the class and the names of its components. */
    private static List<Handle> fields(Object[] arguments) {
      return Arrays.stream(arguments).skip(2).map(Handle.class::cast).toList();
    }

    @Override
    public MethodVisitor visitMethod(
        int access, String method, String descriptor, String signature, String[] exceptions) {
      MethodVisitor to = super.visitMethod(access, method, descriptor, signature, exceptions);
      return new MethodVisitor(Opcodes.ASM9, to) {
        @Override
        public void visitInvokeDynamicInsn(
            String function, String factory, Handle by, Object... arguments) {
          if (by.getOwner().equals(LAMBDAS) && by.getName().equals("metafactory")) {
            String lambda = name + "$$L" + (made.size() + 1);
            LambdaClass written = new LambdaClass(lambda, host, factory);
            made.put(
                lambda,
                written.bytes(
                    function, (Type) arguments[0], (Handle) arguments[1], (Type) arguments[2]));
            super.visitMethodInsn(
                Opcodes.INVOKESTATIC, lambda, LambdaClass.FACTORY, factory, false);
          } else if (by.getOwner().equals(RECORDS) && !function.equals("toString")) {
            RecordMethod called = new RecordMethod(function, factory, fields(arguments));
            ofRecord.add(called);
            super.visitMethodInsn(Opcodes.INVOKESTATIC, name, called.calledName(), factory, false);
          } else {
            super.visitInvokeDynamicInsn(function, factory, by, arguments);
          }
        }
      };
    }
  }
}
