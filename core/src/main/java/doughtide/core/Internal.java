package doughtide.core;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks what is public only because another package of this project uses it. Other programs had
 * better not: it may change or go with any version. Javadoc leaves it out (beside this mark stands
 * the tag {@code @hidden}), and so does the comparison with earlier versions.
 */
@Documented
@Retention(RetentionPolicy.CLASS)
@Target({ElementType.TYPE, ElementType.METHOD, ElementType.CONSTRUCTOR})
public @interface Internal {}
