import { dryMatterYieldPercent } from "../../src/malting/massBalance.ts";
import { pressureAtAltitude } from "../../src/malting/moistAir.ts";
import { analyseKilnHours } from "../../src/report/kilnHours/analyseKilnHours.ts";
import { MINUTE, TIME_ZONE } from "./clock.ts";
import { soundLoadRows } from "./loadRows.ts";
import { logKilning } from "./logKiln.ts";
import type { SimulatedHouse, SimulatedLoad } from "./simulateHouse.ts";
import { ALTITUDE_METRES, SHALLOWER_BED } from "./truths.ts";

const SEASONS = ["winter", "spring", "summer", "autumn"] as const;
const seasonOf = (date: string): (typeof SEASONS)[number] =>
  SEASONS[Math.floor((Number(date.slice(5, 7)) % 12) / 3)] ?? "winter";

function line(name: string, values: readonly number[], decimals = 1): string {
  const n = values.length;
  if (n === 0) return `${name.padEnd(34)} none`;
  const mean = values.reduce((sum, v) => sum + v, 0) / n;
  const sd = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / Math.max(1, n - 1));
  const text = (v: number): string => v.toFixed(decimals);
  return `${name.padEnd(34)} ${String(n).padStart(3)}  mean ${text(mean)}  SD ${text(sd)}  ${text(Math.min(...values))} to ${text(Math.max(...values))}`;
}

/** Figures by which a maltster would judge whether the invented house behaves like one: a line each, for the terminal. */
export function describeHouse(house: SimulatedHouse): readonly string[] {
  const { loads } = house;
  const sound = loads.filter((load) => load.faults.length === 0);
  const of = (value: (load: SimulatedLoad) => number, from = loads): readonly number[] => from.map(value);
  const lines: string[] = [`${house.plan.runs.length} batches, ${loads.length} loads, ${sound.length} without a fault`];
  for (const deep of [true, false]) {
    for (const season of SEASONS) {
      const some = sound.filter(
        (l) => l.planned.date < SHALLOWER_BED.on === deep && seasonOf(l.planned.date) === season,
      );
      lines.push(
        line(
          `kiln hours, ${season}, ${deep ? "deeper" : "shallower"} bed`,
          of((l) => l.kilnHours, some),
        ),
      );
    }
  }
  for (const fault of new Set(loads.flatMap((l) => l.faults))) {
    lines.push(
      line(
        `kiln hours, ${fault}`,
        of(
          (l) => l.kilnHours,
          loads.filter((l) => l.faults.includes(fault)),
        ),
      ),
    );
  }
  lines.push(
    line(
      "drying hours",
      of((l) => l.logged.dryingHours),
    ),
    line(
      "hours from turning up to heat off",
      of((l) => (l.fired.heatOffAt - l.fired.cureStartedAt) / (60 * MINUTE)),
    ),
    line(
      "bed depth, cm",
      of((l) => 100 * l.logged.bedDepthMetres),
    ),
    line(
      "grain in, kg",
      of((l) => l.logged.grainInKilograms),
      0,
    ),
    line(
      "green malt, %",
      of((l) => l.logged.greenMoisturePercent),
    ),
    line(
      "final moisture, %",
      of((l) => l.logged.finalMoisturePercent),
      2,
    ),
    line(
      "spread in the bed at the end, points",
      of((l) => Math.max(...l.fired.layerMoisturePercent) - Math.min(...l.fired.layerMoisturePercent)),
    ),
    line(
      "energy, kWh a load",
      of((l) => l.logged.energyKilowattHours),
      0,
    ),
    line(
      "heater's share of the hold",
      of((l) => l.fired.holdDuty),
      2,
    ),
    line(
      "steep-out moisture, %",
      house.batches.map((b) => b.steepOutPercent),
    ),
    line(
      "mean acrospire length",
      house.batches.flatMap((b) => b.acrospire),
      2,
    ),
  );
  const yields = new Map<string, number[]>();
  for (const load of loads) {
    const { made } = logKilning(house.options.seed, load);
    for (const [i, batch] of load.batches.entries()) {
      const malt = made[i];
      if (!malt) continue;
      const percent = dryMatterYieldPercent({
        grainInKilograms: load.grainKilograms[i] ?? Number.NaN,
        grainMoisturePercent: batch.planned.lot.moisturePercent,
        maltKilograms: malt.maltKilograms,
        maltMoisturePercent: load.logged.finalMoisturePercent,
      });
      const { variety } = batch.planned;
      yields.set(variety.name, [...(yields.get(variety.name) ?? []), percent]);
    }
  }
  for (const [variety, values] of yields) lines.push(line(`dry-matter yield, ${variety}, %`, values));
  const { kilnHours } = analyseKilnHours(soundLoadRows(house), {
    air: "at_loading",
    without: new Set(),
    targetMoisturePercent: 4.4,
    pressurePascals: pressureAtAltitude(ALTITUDE_METRES),
    timeZone: TIME_ZONE,
  });
  const { dryingAir, humidityDepth } = kilnHours;
  if (dryingAir && humidityDepth) {
    const { estimate, low, high } = humidityDepth.hoursPerTenPoints;
    lines.push(
      `residual SD ${dryingAir.fit.residualStandardDeviation.toFixed(2)} h by drying air, ${humidityDepth.fit.residualStandardDeviation.toFixed(2)} h by humidity and depth`,
      `ten points of humidity: ${estimate.toFixed(2)} h (${low.toFixed(2)} to ${high.toFixed(2)})`,
      `one centimetre of bed: ${dryingAir.hoursPerCentimetre.estimate.toFixed(2)} h (${dryingAir.hoursPerCentimetre.low.toFixed(2)} to ${dryingAir.hoursPerCentimetre.high.toFixed(2)}) by drying air`,
    );
  }
  return lines;
}
