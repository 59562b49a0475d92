package doughtide.cli.answer;

import java.util.OptionalDouble;

/** Takes the fields of an answer as data, one after the other. */
interface Fields {

  void text(String name, String text);

  /** A number; not there if it is empty or not finite. */
  void number(String name, OptionalDouble number, int decimals);

  void flag(String name, boolean truth);

  /** A field without a value. */
  void nothing(String name);
}
