import type { LoadRow } from "../../report/loadRow.ts";
import type { ReportWith } from "../../report/report.ts";

/** Every load whose thermostats were read, in time order. */
export function loadsWithReadings({ loads, thermostat }: ReportWith<"thermostat">): readonly LoadRow[] {
  const read = new Set(thermostat.kilns.flatMap((kiln) => kiln.loads.map(({ load }) => load)));
  return loads.filter(({ load }) => read.has(load));
}

/** The load that is shown close up: the one asked for, else the latest with readings; null where there is none. */
export function shownLoad(report: ReportWith<"thermostat">, asked: string | null): LoadRow | null {
  const loads = loadsWithReadings(report);
  return loads.find(({ load }) => load === asked) ?? loads.at(-1) ?? null;
}
