package doughtide.cli.jar;

import static org.objectweb.asm.Opcodes.ACC_PRIVATE;
import static org.objectweb.asm.Opcodes.ACC_STATIC;
import static org.objectweb.asm.Opcodes.ACC_SYNTHETIC;
import static org.objectweb.asm.commons.GeneratorAdapter.EQ;
import static org.objectweb.asm.commons.GeneratorAdapter.MUL;
import static org.objectweb.asm.commons.GeneratorAdapter.NE;

import java.util.List;
import java.util.Objects;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Handle;
import org.objectweb.asm.Label;
import org.objectweb.asm.Opcodes;
import org.objectweb.asm.Type;
import org.objectweb.asm.commons.GeneratorAdapter;
import org.objectweb.asm.commons.Method;

/**
 * What compares two records, or makes the hash of one, as {@link java.lang.runtime.ObjectMethods}
 * says.
 *
 * @param name of the method of the record that calls it
 * @param descriptor with the record as the first argument
 * @param fields of the record
 */
record RecordMethod(String name, String descriptor, List<Handle> fields) {

  private static final Type OBJECT = Type.getType(Object.class);
  private static final Type OBJECTS = Type.getType(Objects.class);

  /** Its own name in the record. */
  public String calledName() {
    return name + "$";
  }

  /** Writes it into the class of the record. */
  public void write(ClassVisitor to) {
    int access = ACC_PRIVATE | ACC_STATIC | ACC_SYNTHETIC;
    GeneratorAdapter code =
        new GeneratorAdapter(
            to.visitMethod(access, calledName(), descriptor, null, null),
            access,
            calledName(),
            descriptor);
    if (name.equals("equals")) {
      equals(code);
    } else {
      hash(code);
    }
    code.returnValue();
    code.endMethod();
  }

  private Type self() {
    return Type.getArgumentTypes(descriptor)[0];
  }

  private void hash(GeneratorAdapter code) {
    code.push(0);
    for (Handle field : fields) {
      Type type = Type.getType(field.getDesc());
      code.push(31);
      code.math(MUL, Type.INT_TYPE);
      code.loadArg(0);
      code.getField(self(), field.getName(), type);
      code.invokeStatic(
          isPrimitive(type) ? boxOf(type) : OBJECTS,
          method("hashCode", Type.INT_TYPE, isPrimitive(type) ? type : OBJECT));
      code.math(GeneratorAdapter.ADD, Type.INT_TYPE);
    }
  }

  private void equals(GeneratorAdapter code) {
    Label same = new Label();
    Label other = new Label();
    code.loadArgs();
    code.ifCmp(OBJECT, EQ, same);
    code.loadArg(1);
    code.instanceOf(self());
    code.ifZCmp(EQ, other);
    for (Handle field : fields) {
      compare(code, Type.getType(field.getDesc()), field.getName(), other);
    }
    mark(code, same);
    code.push(true);
    code.returnValue();
    mark(code, other);
    code.push(false);
  }

  private void compare(GeneratorAdapter code, Type type, String field, Label other) {
    code.loadArg(0);
    code.getField(self(), field, type);
    code.loadArg(1);
    code.checkCast(self());
    code.getField(self(), field, type);
    if (isPrimitive(type)) {
      code.invokeStatic(boxOf(type), method("compare", Type.INT_TYPE, type, type));
      code.ifZCmp(NE, other);
    } else {
      code.invokeStatic(OBJECTS, method("equals", Type.BOOLEAN_TYPE, OBJECT, OBJECT));
      code.ifZCmp(EQ, other);
    }
  }

  /** A place that is jumped to, where nothing but the arguments is known. */
  private void mark(GeneratorAdapter code, Label label) {
    Object[] arguments = {self().getInternalName(), OBJECT.getInternalName()};
    code.mark(label);
    code.visitFrame(Opcodes.F_NEW, arguments.length, arguments, 0, new Object[0]);
  }

  private static Method method(String name, Type result, Type... arguments) {
    return new Method(name, result, arguments);
  }

  private static boolean isPrimitive(Type type) {
    return type.getSort() < Type.ARRAY;
  }

  private static Type boxOf(Type type) {
    return switch (type.getSort()) {
      case Type.BOOLEAN -> Type.getType(Boolean.class);
      case Type.CHAR -> Type.getType(Character.class);
      case Type.BYTE -> Type.getType(Byte.class);
      case Type.SHORT -> Type.getType(Short.class);
      case Type.INT -> Type.getType(Integer.class);
      case Type.FLOAT -> Type.getType(Float.class);
      case Type.LONG -> Type.getType(Long.class);
      default -> Type.getType(Double.class);
    };
  }
}
