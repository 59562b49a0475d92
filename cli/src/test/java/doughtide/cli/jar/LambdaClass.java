package doughtide.cli.jar;

import static org.objectweb.asm.Opcodes.ACC_FINAL;
import static org.objectweb.asm.Opcodes.ACC_PRIVATE;
import static org.objectweb.asm.Opcodes.ACC_PUBLIC;
import static org.objectweb.asm.Opcodes.ACC_STATIC;
import static org.objectweb.asm.Opcodes.ACC_SUPER;
import static org.objectweb.asm.Opcodes.ACC_SYNTHETIC;
import static org.objectweb.asm.Opcodes.H_INVOKESTATIC;
import static org.objectweb.asm.Opcodes.H_NEWINVOKESPECIAL;
import static org.objectweb.asm.Opcodes.INVOKEINTERFACE;
import static org.objectweb.asm.Opcodes.INVOKESPECIAL;
import static org.objectweb.asm.Opcodes.INVOKESTATIC;
import static org.objectweb.asm.Opcodes.INVOKEVIRTUAL;

import java.util.ArrayList;
import java.util.List;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.commons.GeneratorAdapter;

/** The class of one lambda: what it captured are its fields. */
final class LambdaClass {

  /** The method that makes a lambda of what it captures. */
  static final String FACTORY = "of";

  private static final String OBJECT = "java/lang/Object";
  private static final Type CHARACTER = Type.getType(Character.class);

  private final Type self;
  private final String host;
  private final Type function;
  private final Type[] captured;
  private final String constructor;
  private final ClassWriter writer = new ClassWriter(ClassWriter.COMPUTE_MAXS);

  /**
   * @param name of the class
   * @param host of its nest
   * @param factory captured types and interface, as a descriptor
   */
  LambdaClass(String name, String host, String factory) {
    this.self = Type.getObjectType(name);
    this.host = host;
    this.function = Type.getReturnType(factory);
    this.captured = Type.getArgumentTypes(factory);
    this.constructor = Type.getMethodDescriptor(Type.VOID_TYPE, captured);
  }

  /**
   * Writes the class; the arguments are those of {@link java.lang.invoke.LambdaMetafactory}.
   *
   * @param method of the interface
   * @param erased its type
   * @param body what it calls
   * @param typed its type with type arguments in place
   */
  byte[] bytes(String method, Type erased, Handle body, Type typed) {
    writer.visit(
        Opcodes.V17,
        ACC_FINAL | ACC_SUPER | ACC_SYNTHETIC,
        self.getInternalName(),
        null,
        OBJECT,
        new String[] {function.getInternalName()});
    writer.visitNestHost(host);
    constructor();
    factory();
    method(begun(ACC_PUBLIC, method, erased.getDescriptor()), erased, body, typed);
    writer.visitEnd();
    return writer.toByteArray();
  }

  private GeneratorAdapter begun(int access, String name, String descriptor) {
    return new GeneratorAdapter(
        writer.visitMethod(access, name, descriptor, null, null), access, name, descriptor);
  }

  private void constructor() {
    GeneratorAdapter code = begun(ACC_PRIVATE, "<init>", constructor);
    code.loadThis();
    code.visitMethodInsn(INVOKESPECIAL, OBJECT, "<init>", "()V", false);
    for (int i = 0; i < captured.length; i++) {
      writer.visitField(ACC_PRIVATE | ACC_FINAL, field(i), captured[i].getDescriptor(), null, null);
      code.loadThis();
      code.loadArg(i);
      code.putField(self, field(i), captured[i]);
    }
    end(code);
  }

  private static String field(int i) {
    return "captured" + i;
  }

  private void factory() {
    GeneratorAdapter code =
        begun(ACC_STATIC, FACTORY, Type.getMethodDescriptor(function, captured));
    code.newInstance(self);
    code.dup();
    code.loadArgs();
    code.visitMethodInsn(INVOKESPECIAL, self.getInternalName(), "<init>", constructor, false);
    end(code);
  }

  private void method(GeneratorAdapter code, Type erased, Handle body, Type typed) {
    Type owner = Type.getObjectType(body.getOwner());
    boolean makes = body.getTag() == H_NEWINVOKESPECIAL;
    if (makes) {
      code.newInstance(owner);
      code.dup();
    }
    arguments(code, erased.getArgumentTypes(), typed.getArgumentTypes(), parameters(body));
    code.visitMethodInsn(
        instruction(body), body.getOwner(), body.getName(), body.getDesc(), body.isInterface());
    Type result = makes ? owner : Type.getReturnType(body.getDesc());
    result(code, result, typed.getReturnType(), erased.getReturnType());
    end(code);
  }

  /** What the body takes, the object it is called on included. */
  private static List<Type> parameters(Handle body) {
    List<Type> parameters = new ArrayList<>();
    if (body.getTag() != H_INVOKESTATIC && body.getTag() != H_NEWINVOKESPECIAL) {
      parameters.add(Type.getObjectType(body.getOwner()));
    }
    parameters.addAll(List.of(Type.getArgumentTypes(body.getDesc())));
    return parameters;
  }

  private void arguments(
      GeneratorAdapter code, Type[] erased, Type[] typed, List<Type> parameters) {
    for (int i = 0; i < captured.length; i++) {
      code.loadThis();
      code.getField(self, field(i), captured[i]);
    }
    for (int i = 0; i < erased.length; i++) {
      code.loadArg(i);
      adapt(code, erased[i], typed[i]);
      adapt(code, typed[i], parameters.get(captured.length + i));
    }
  }

  private static void result(GeneratorAdapter code, Type result, Type typed, Type erased) {
    if (erased != Type.VOID_TYPE) {
      adapt(code, result, typed);
      adapt(code, typed, erased);
    } else if (result.getSize() == 1) {
      code.pop();
    } else if (result.getSize() == 2) {
      code.pop2();
    }
  }

  private static int instruction(Handle body) {
    return switch (body.getTag()) {
      case H_INVOKESTATIC -> INVOKESTATIC;
      case H_NEWINVOKESPECIAL -> INVOKESPECIAL;
      default -> body.isInterface() ? INVOKEINTERFACE : INVOKEVIRTUAL;
    };
  }

  private static void adapt(GeneratorAdapter code, Type from, Type to) {
    if (isPrimitive(from) && isPrimitive(to)) {
      code.cast(from, to);
    } else if (isPrimitive(from)) {
      code.valueOf(from);
    } else if (isPrimitive(to)) {
      Type own = from.equals(CHARACTER) ? Type.CHAR_TYPE : to;
      code.unbox(own);
      code.cast(own, to);
    } else if (!to.equals(from)) {
      code.checkCast(to);
    }
  }

  private static boolean isPrimitive(Type type) {
    return type.getSort() < Type.ARRAY;
  }

  private static void end(GeneratorAdapter code) {
    code.returnValue();
    code.endMethod();
  }
}
