package doughtide.cli.answer;

/** Something that becomes a part of an answer. */
interface ItemBuilder {
  Item build();
}
