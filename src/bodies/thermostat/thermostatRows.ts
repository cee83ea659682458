import type { ThermostatLoad } from "../../malting/thermostat/thermostatLoad.ts";
import type { HoldJudgement, KilnThermostat } from "../../report/thermostatResult.ts";
import { print } from "../../units/print.ts";
import { type Quantity, shownAs } from "../../units/quantity.ts";
import type { UnitSystem } from "../../units/unitSystem.ts";
import { printed } from "../printed.ts";

/** A column of the table of loads: its heading, and what a load has there. */
export interface LoadColumn {
  readonly label: string;
  readonly cell: (load: ThermostatLoad) => string;
}

/** Level of a load's own stretch before any change: what a change is counted from where no error can be given. */
function levels(judgement: HoldJudgement | null): ReadonlyMap<string, number> {
  return new Map(
    (judgement?.points ?? []).flatMap(({ load, stretch }) => {
      const level = judgement?.stretches[stretch]?.models?.levelKelvin.estimate;
      return level === undefined ? [] : [[load, level] as const];
    }),
  );
}

/** The columns of one hold. Offsets are errors only where the probe sits at the bulb; else changes from their stretch's level. */
function holdColumns(kiln: KilnThermostat, hold: "drying" | "cure", units: UnitSystem): readonly LoadColumn[] {
  const degree = shownAs("temperatureDifference", units).unit;
  const bare = (value: number | null, quantity: Quantity, decimals: number, signed = false): string =>
    printed(value, quantity, units, { decimals, signed, bare: true });
  const before = levels(kiln[hold]);
  const isDrying = hold === "drying";
  const change = (load: ThermostatLoad, offset: number | null): number | null => {
    const level = before.get(load.load);
    return offset === null || level === undefined ? null : offset - level;
  };
  const offsetOf = (load: ThermostatLoad): number | null => {
    const offset = isDrying ? load.dryingOffsetKelvin : load.cureOffsetKelvin;
    return kiln.probeAtBulb ? offset : change(load, offset);
  };
  const set = (load: ThermostatLoad): number | null => (isDrying ? load.dryingSetCelsius : load.cureSetCelsius);
  const duty = (load: ThermostatLoad): number | null => (isDrying ? load.dryingDuty : load.cureDuty);
  const swing = (load: ThermostatLoad): number | null => (isDrying ? load.dryingSwingKelvin : load.cureSwingKelvin);
  const period = (load: ThermostatLoad): number | null =>
    isDrying ? load.dryingPeriodMinutes : load.curePeriodMinutes;
  return [
    { label: `set, ${shownAs("temperature", units).unit}`, cell: (load) => bare(set(load), "temperature", 0) },
    {
      label: `${kiln.probeAtBulb ? "offset" : "change"}, ${degree}`,
      cell: (load) => bare(offsetOf(load), "temperatureDifference", 2, true),
    },
    {
      label: `± ${degree}`,
      cell: (load) =>
        bare(isDrying ? load.dryingStandardErrorKelvin : load.cureStandardErrorKelvin, "temperatureDifference", 2),
    },
    { label: "heater on, %", cell: (load) => percent(duty(load)) },
    { label: `swing, ${degree}`, cell: (load) => bare(swing(load), "temperatureDifference", 1) },
    { label: "cycle, min", cell: (load) => printed(period(load), "count", units, { decimals: 1 }) },
  ];
}

const percent = (share: number | null): string =>
  share === null || !Number.isFinite(share)
    ? "–"
    : print(share * 100, "percent", "metric", { decimals: 0, bare: true });

/** All columns by the heading that spans them. */
export function loadColumns(
  kiln: KilnThermostat,
  units: UnitSystem,
): readonly { readonly heading: string; readonly columns: readonly LoadColumn[] }[] {
  const degree = shownAs("temperatureDifference", units).unit;
  const difference = (value: number | null, decimals: number): string =>
    printed(value, "temperatureDifference", units, { decimals, bare: true });
  const hasFan = kiln.loads.some(({ fanShareOfHold }) => fanShareOfHold !== null);
  return [
    { heading: "drying hold", columns: holdColumns(kiln, "drying", units) },
    {
      heading: "cure",
      columns: [
        ...holdColumns(kiln, "cure", units),
        { label: `overshoot, ${degree}`, cell: (load) => difference(load.cureOvershootKelvin, 1) },
      ],
    },
    {
      heading: "heating up",
      columns: [
        { label: "to drying set, min", cell: (load) => printed(load.minutesToDryingSet, "count", units) },
        { label: `rise, ${degree} a minute`, cell: (load) => difference(load.warmUpRiseKelvinPerMinute, 2) },
      ],
    },
    {
      heading: "read by",
      columns: [
        ...(hasFan ? [{ label: "fan on, %", cell: (load: ThermostatLoad) => percent(load.fanShareOfHold) }] : []),
        { label: "readings", cell: (load) => printed(load.readings, "count", units) },
        {
          label: `logger off, ${degree}`,
          cell: (load) =>
            printed(load.dryingLoggerErrorKelvin, "temperatureDifference", units, {
              decimals: 2,
              signed: true,
              bare: true,
            }),
        },
      ],
    },
  ];
}
