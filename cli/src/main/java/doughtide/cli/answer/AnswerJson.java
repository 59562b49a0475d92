package doughtide.cli.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** An answer as one JSON object. */
final class AnswerJson implements Fields {

  private static final String UNDERSTOOD = "understood";

  private final JsonWriter json;

  /** What came from the kitchen, until it is told. */
  private final List<String> kitchen;

  private AnswerJson(JsonWriter json, List<String> kitchen) {
    this.json = json;
    this.kitchen = new ArrayList<>(kitchen);
  }

  static void write(Answer answer, Appendable out) {
    AnswerJson writer = new AnswerJson(new JsonWriter(out), answer.kitchen());
    writer
        .json
        .beginObject()
        .field("schema", "doughtide/" + answer.command() + "/" + answer.version())
        .field("answer", answer.headline().replace('\n', ' '));
    writer.items(answer.body());
    if (!writer.kitchen.isEmpty()) {
      writer.json.name(UNDERSTOOD).beginObject();
      writer.fromKitchen();
      writer.json.endObject();
    }
    writer.json.endObject();
  }

  private void items(Section section) {
    section.items().forEach(this::item);
  }

  private void item(Item item) {
    if (item instanceof Item.Quantity quantity) {
      quantity(quantity.key(), quantity.value());
    } else if (item instanceof Section section) {
      section(section);
    } else if (item instanceof Listing listing) {
      listing(listing);
    } else if (item instanceof Item.Texts texts && !texts.key().isEmpty()) {
      json.name(texts.key()).beginArray();
      texts.texts().forEach(json::value);
      json.endArray();
    } else if (item instanceof Item.Later later) {
      listing(later.listing().get());
    }
  }

  private void quantity(String key, Value value) {
    if (key.isEmpty()) {
      return;
    }
    boolean object = value instanceof Value.Window && !key.equals(Section.HERE);
    if (object) {
      json.name(key).beginObject();
    }
    value.fields(key, this);
    if (object) {
      json.endObject();
    }
  }

  private void section(Section section) {
    if (section.key().isEmpty()) {
      items(section);
    } else {
      json.name(section.key()).beginObject();
      items(section);
      if (section.key().equals(UNDERSTOOD) && !kitchen.isEmpty()) {
        fromKitchen();
      }
      json.endObject();
    }
  }

  private void fromKitchen() {
    json.name("fromKitchen").beginArray();
    kitchen.forEach(json::value);
    json.endArray();
    kitchen.clear();
  }

  private void listing(Listing listing) {
    if (listing.key().isEmpty()) {
      return;
    }
    json.name(listing.key()).beginArray();
    for (Section row : listing.rows()) {
      json.beginObject();
      items(row);
      json.endObject();
    }
    json.endArray();
  }

  @Override
  public void text(String name, String text) {
    json.field(name, text);
  }

  @Override
  public void number(String name, OptionalDouble number, int decimals) {
    json.field(name, number, decimals);
  }

  @Override
  public void flag(String name, boolean truth) {
    json.field(name, truth);
  }

  @Override
  public void nothing(String name) {
    json.nullField(name);
  }
}
