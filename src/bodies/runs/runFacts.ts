import type { MaltingLoss } from "../../malting/massBalance.ts";
import type { LoadRow } from "../../report/loadRow.ts";
import type { RunPageResult } from "../../report/runPageResult.ts";
import type { RunRow } from "../../report/runRow.ts";
import { printMoment } from "../../units/instant.ts";
import { print, printRange } from "../../units/print.ts";
import type { Quantity } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { varietyPath } from "../../units/varietyPath.ts";
import type { Fact } from "./StageFacts.tsx";

/** Says the facts of one reader in one house. */
export interface FactReader {
  readonly units: UnitSystem;
  readonly timeZone: string;
}

type Kept = readonly (Fact | null)[];
const logged = (facts: Kept): readonly Fact[] => facts.filter((fact) => fact !== null);

function sayer({ units, timeZone }: FactReader) {
  return {
    number: (name: string, value: number | null, quantity: Quantity, basis: string | null = null): Fact | null =>
      value === null ? null : { name, value: print(value, quantity, units), basis },
    moment: (name: string, at: number | null): Fact | null =>
      at === null ? null : { name, value: printMoment(at, timeZone) },
    text: (name: string, value: string | number | null): Fact | null =>
      value === null || value === "" ? null : { name, value: String(value) },
  };
}

export function grainFacts(run: RunRow, reader: FactReader): readonly Fact[] {
  const say = sayer(reader);
  return logged([
    run.variety === null ? null : { name: "variety", value: run.variety, path: varietyPath(run.variety) },
    say.text("grain", run.grain),
    say.text(run.lots === null ? "lot" : "lots", run.lots ?? run.lot),
    say.text("grower", run.grower),
    say.text("crop year", run.cropYear),
    say.number("grain in", run.grainInKilograms, "mass"),
    say.number("grain moisture", run.grainMoisturePercent, "percent"),
    say.number("protein, dry", run.grainProteinDryPercent, "percent"),
  ]);
}

export function steepFacts(run: RunRow, reader: FactReader): readonly Fact[] {
  const say = sayer(reader);
  return logged([
    say.moment("in steep", run.steepStartedAt),
    say.moment("out of steep", run.steepEndedAt),
    say.number("water", run.steepWaterCelsius, "temperature"),
    say.number("under water", run.steepWetHours, "hours"),
    say.number("air rests", run.steepAirRestHours, "hours"),
    say.number("mass at steep-out", run.steepOutKilograms, "mass"),
    say.number("moisture at steep-out", run.steepOutMoisturePercent, "percent", run.steepOutMoistureBasis),
    say.number("chitted", run.chittedPercent, "percent"),
    say.text("tanks", run.tanks),
  ]);
}

export function germinationFacts(run: RunRow, reader: FactReader): readonly Fact[] {
  const say = sayer(reader);
  const counted = run.acrospireCounted === null ? null : `of kernel length, ${run.acrospireCounted} kernels counted`;
  return logged([
    say.moment("on the floor", run.germinationStartedAt),
    say.moment("off the floor", run.germinationEndedAt),
    say.number("room", run.roomCelsius, "temperature"),
    say.number("bed, mean", run.bedMeanCelsius, "temperature"),
    say.number("bed, warmest", run.bedMaxCelsius, "temperature"),
    say.text("turns", run.turns),
    say.number("acrospire, mean", run.acrospireMean, "fraction", counted),
    say.number("overgrown", run.acrospireOvergrownPercent, "percent"),
    say.number("green moisture", run.greenMoisturePercent, "percent"),
    say.text("beds", run.beds),
  ]);
}

/** The hours of a load like this one, as expected before it was loaded. */
function expectedFact(expected: RunPageResult["expectedHours"]): Fact | null {
  if (expected === null) return null;
  const between = `${printRange(expected.low, expected.high, "hours", "metric")} in 90 of 100 such loads`;
  return { name: "hours expected", value: print(expected.estimate, "hours", "metric"), basis: between };
}

export function kilnFacts({ run, loads, expectedHours }: RunPageResult, reader: FactReader): readonly Fact[] {
  const say = sayer(reader);
  const load = loads[0] ?? null;
  const shared = loads.flatMap(({ runs }) => runs).filter((other) => other !== run.run);
  return logged([
    say.text("kiln", run.kiln),
    say.moment("loaded", run.loadedAt),
    say.moment("cure started", run.cureStartedAt),
    say.moment("heat off", run.heatOffAt),
    say.moment("unloaded", run.unloadedAt),
    say.number("kiln hours", run.kilnHours, "hours"),
    expectedFact(expectedHours),
    say.number("drying hours", run.dryingHours, "hours", "loading to the start of the cure"),
    say.number("bed depth", run.bedDepthMetres, "bedDepth"),
    say.number("green load", run.greenLoadKilograms, "mass"),
    ...airFacts(load, reader),
    say.number("drying set point", load?.dryingSetCelsius ?? null, "temperature"),
    say.number("cure set point", load?.cureSetCelsius ?? null, "temperature"),
    say.number("final moisture", run.finalMoisturePercent, "percent", run.finalMoistureBasis),
    say.number("water removed", run.waterRemovedKilograms, "mass"),
    say.number("energy", run.energyKilowattHours, "energy"),
    load?.powerLimited
      ? { name: "heater", value: "could not keep up", basis: "left out of the fit of kiln hours" }
      : null,
    shared.length === 0 ? null : say.text("in the same load", [...new Set(shared)].join(", ")),
    loads.length > 1 ? say.text("loads", loads.length) : null,
  ]);
}

function airFacts(load: LoadRow | null, reader: FactReader): Kept {
  if (load === null) return [];
  const say = sayer(reader);
  return (
    [
      ["at loading", load.airAtLoading],
      ["over the load", load.airOverLoad],
    ] as const
  ).flatMap(([when, air]) => {
    if (air === null) return [];
    const basis = air.source === "weather" ? "from the weather log" : "as logged with the load";
    return [
      say.number(`humidity ${when}`, air.relativeHumidityPercent, "percent", basis),
      say.number(`air ${when}`, air.celsius, "temperature", basis),
    ];
  });
}

/** Shown as it is where it is below 0: then a mass or a moisture is off, and hiding it would hide that. */
const BELOW_NOTHING = "below 0: a mass or a moisture is off";

export function maltFacts(run: RunRow, loss: MaltingLoss | null, reader: FactReader): readonly Fact[] {
  const say = sayer(reader);
  return logged([
    say.number("malt unloaded", run.maltOutKilograms, "mass"),
    say.number("malt", run.maltKilograms, "mass", run.maltBasis),
    say.number("rootlets", run.rootletsKilograms, "mass"),
    say.number("yield, dry matter", run.dryMatterYieldPercent, "percent"),
    say.number("yield, as is", run.asIsYieldPercent, "percent"),
    say.number("malting loss, of dry matter", loss?.totalPercent ?? null, "percent"),
    say.number("of it rootlets", loss?.rootletsPercent ?? null, "percent", "as dry as the malt, common practice"),
    say.number(
      "steep and respiration, by difference",
      loss?.restPercent ?? null,
      "percent",
      loss !== null && (loss.restPercent ?? 0) < 0 ? BELOW_NOTHING : null,
    ),
    say.text("bag code", run.bagCode),
  ]);
}
