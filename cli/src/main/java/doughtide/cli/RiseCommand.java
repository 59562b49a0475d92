package doughtide.cli;

import java.util.Optional;

/** Reads a dough and says how it was understood. */
final class RiseCommand implements Command {

  @Override
  public CommandSpec spec() {
    return CommandSpec.named("rise", "reads a dough and shows it in both conventions")
        .options(DoughOptions.specs())
        .options(ClockOptions.specs())
        .example(
            "A dough at 25 °C",
            "--dough-temp",
            "25C",
            "--starter",
            "20%",
            "--starter-hydration",
            "100%",
            "--hydration",
            "72%",
            "--salt",
            "2%")
        .example(
            "Warm, then cooler, with clock times",
            "--dough-temp",
            "78F,3h:22C",
            "--prefermented",
            "9.1%",
            "--flour",
            "white:80%,wholemeal wheat:20%",
            "--mixed-at",
            "2027-03-06T09:30",
            "--zone",
            "Europe/Berlin")
        .note("Caution: raw flour and raw dough are not for eating.")
        .build();
  }

  @Override
  public void run(Arguments arguments, Session session) {
    DoughOptions dough = DoughOptions.read(arguments);
    dough.doughTemperature(arguments);
    Optional<ClockTimes> clock = ClockOptions.read(arguments, session.environment());
    Understood page = new Understood();
    dough.describe(page);
    clock.ifPresent(times -> page.add("Mixed", times.startInWords()));
    page.lines().forEach(session.out()::println);
  }
}
