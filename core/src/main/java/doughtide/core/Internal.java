package doughtide.core;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Marks what is public only because another package of this project uses it: it may change or go
 * with any version, so other programs had better not use it. A type with this mark is in no
 * Javadoc, and neither it nor a marked member is compared with earlier versions. A marked part of a
 * record marks the parameter of its constructor, too.
 */
@Documented
@Retention(RetentionPolicy.CLASS)
@Target({ElementType.TYPE, ElementType.METHOD, ElementType.CONSTRUCTOR})
public @interface Internal {}
