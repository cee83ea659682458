import type { HoldJudgement, OffsetPoint } from "../../report/thermostatResult.ts";
import { capitalised } from "../controlCharts/chartWords.ts";
import type { FigureSettings } from "../figureSettings.ts";
import { countOf } from "../listedRows.ts";
import { degreeWords } from "./degreeWords.ts";

/** One of the two measures: what it is called and what a load has of it. */
export interface Measure {
  readonly name: string;
  readonly kelvinOf: (point: OffsetPoint) => number | null;
  readonly decimals: number;
  readonly after: string;
  /** Kelvins that the strip spans at least, so that scatter does not look like change. */
  readonly least: number;
}

export const SWING: Measure = {
  name: "swing",
  kelvinOf: (point) => point.swingKelvin,
  decimals: 1,
  after: "",
  least: 2,
};
export const RISE: Measure = {
  name: "rise at full power",
  kelvinOf: (point) => point.riseKelvinPerMinute,
  decimals: 2,
  after: " a minute",
  least: 0.4,
};

/** `1.12 °C a minute`. */
export const measureWords = ({ decimals, after }: Measure, kelvin: number, settings: FigureSettings): string =>
  `${degreeWords(settings, decimals).size(kelvin)}${after}`;

/** The span of the latest stretch, and that of the loads before it, since one shows whether the other moved. */
export function measureSentence(
  measure: Measure,
  { points, stretches }: HoldJudgement,
  settings: FigureSettings,
): string {
  const latest = stretches.length - 1;
  const bare = (kelvin: number): string => degreeWords(settings, measure.decimals).bareSize(kelvin);
  const spanOf = (held: readonly OffsetPoint[]): string | null => {
    const values = held.flatMap((point) => measure.kelvinOf(point) ?? []);
    if (values.length === 0) return null;
    const [least, most] = [bare(Math.min(...values)), measureWords(measure, Math.max(...values), settings)];
    return `${most.startsWith(least) ? most : `${least} to ${most}`} (${countOf(values.length, "load")})`;
  };
  const now = spanOf(points.filter((point) => point.stretch === latest));
  const before = spanOf(points.filter((point) => point.stretch < latest));
  const without = points.filter((point) => measure.kelvinOf(point) === null).length;
  const name = capitalised(measure.name);
  if (now === null) return `${name}: ${before} before the last calibration or repair, none since.`;
  const since = latest > 0 ? " since the last calibration or repair" : "";
  const lacking = without === 0 ? "" : `; ${countOf(without, "load")} without`;
  return `${name}${since}: ${now}${before === null ? "" : `; before: ${before}`}${lacking}.`;
}
