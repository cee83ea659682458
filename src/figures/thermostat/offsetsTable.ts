import type { HoldJudgement, KilnThermostat } from "../../report/thermostatResult.ts";
import { printDate } from "../../units/instant.ts";
import { print } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { DataTable } from "../figureSpec.ts";
import { latestFirst } from "../listedRows.ts";
import { loadCell } from "../loadPoints.ts";
import { degreeWords } from "./degreeWords.ts";

/** The loads behind the figure, latest first: offset and what it rests on. */
export function offsetsTable(judgement: HoldJudgement, kiln: KilnThermostat, settings: FigureSettings): DataTable {
  const { units, timeZone } = settings;
  const { bareDifference } = degreeWords(settings);
  const fine = degreeWords(settings, 2);
  const degrees = shownAs("temperatureDifference", units).unit;
  const loads = new Map(kiln.loads.map((load) => [load.load, load]));
  const alarms = new Map(
    judgement.stretches.flatMap(({ alarm }) =>
      (alarm?.alarms ?? []).map(({ raisedAtLoad, direction }) => [raisedAtLoad, `alarm, ${direction}`]),
    ),
  );
  return latestFirst(
    judgement.points,
    "load",
    [
      { label: "run", numeric: false },
      { label: "loaded", numeric: false },
      { label: "set", unit: shownAs("temperature", units).unit, numeric: true },
      { label: kiln.probeAtBulb ? "offset" : "change", unit: degrees, numeric: true },
      { label: "standard error", unit: degrees, numeric: true },
      { label: "heater on", unit: "%", numeric: true },
      { label: "logger’s error, taken off", unit: degrees, numeric: true },
      { label: "signal", numeric: false },
    ],
    (point) => {
      const own = loads.get(point.load);
      const taken = judgement.hold === "drying" ? own?.dryingLoggerErrorKelvin : own?.cureLoggerErrorKelvin;
      return [
        loadCell(point.runs, point.load, settings),
        printDate(point.at, timeZone),
        print(point.setCelsius, "temperature", units, { bare: true }),
        bareDifference(point.offsetKelvin),
        point.standardErrorKelvin === null ? "" : fine.bareSize(point.standardErrorKelvin),
        point.duty === null ? "" : print(100 * point.duty, "percent", units, { bare: true, decimals: 0 }),
        taken === null || taken === undefined ? "" : bareDifference(taken),
        alarms.get(point.load) ?? "",
      ];
    },
  );
}
