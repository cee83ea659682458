import { fitDriftModels } from "../../analysis/drift/driftModels.ts";
import { explainDrift } from "../../analysis/drift/explainDrift.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import { printNumber, printSigned } from "../../units/print.ts";
import type { LoadRow } from "../loadRow.ts";
import type { DriftEvidence, OffsetPoint } from "../thermostatResult.ts";

const DAY = 86_400_000;

const excludesZero = ({ low, high }: Interval): boolean => low > 0 || high < 0;
const said = ({ estimate, low, high }: Interval, decimals: number): string =>
  `${printSigned(estimate, decimals)} (${printSigned(low, decimals)} to ${printSigned(high, decimals)})`;

/**
 * What speaks for which kind of change over the loads of the latest stretch: the swing of the cycles, the rise at full power,
 * the air outside. Evidence with its size, in words; the reader judges.
 *
 * @param points offsets of the stretch, in time order
 */
export function driftEvidence(
  points: readonly OffsetPoint[],
  rows: ReadonlyMap<string, LoadRow>,
): readonly DriftEvidence[] {
  const first = points[0]?.at ?? 0;
  const series = {
    days: points.map(({ at }) => (at - first) / DAY),
    values: points.map(({ offsetKelvin }) => offsetKelvin),
  };
  const models = fitDriftModels(series);
  if (isFitFault(models) || models.winner === "constant") return [];
  const air = points.map(({ load }) => {
    const row = rows.get(load);
    return row?.airOverLoad?.celsius ?? row?.airAtLoading?.celsius ?? null;
  });
  const seasons = air.every((celsius) => celsius !== null) ? [{ name: "air", values: air }] : [];
  const {
    offsetChange,
    companions,
    seasons: effects,
  } = explainDrift(series, models, {
    companions: [
      { name: "swing", values: points.map(({ swingKelvin }) => swingKelvin) },
      { name: "rise", values: points.map(({ riseKelvinPerMinute }) => riseKelvinPerMinute) },
    ],
    seasons,
  });
  const found: DriftEvidence[] = [];
  if (offsetChange !== null) {
    found.push({
      kind: "set point",
      sentence: `The middle of the cycles has moved by ${said(offsetChange, 1)}\u00a0°C.`,
      speaks: excludesZero(offsetChange) ? "for" : "open",
    });
  }
  for (const { name, found: moved } of companions) {
    const kind = name === "swing" ? "worn contacts" : "weak heater or fan";
    const what = name === "swing" ? "The swing of the cycles" : "The rise at full power";
    if (isFitFault(moved)) {
      found.push({ kind, sentence: `${what} is read in too few of these loads to tell.`, speaks: "open" });
      continue;
    }
    const unit = name === "swing" ? "°C" : "°C a minute";
    // Contacts wear towards a wider swing, a heater or fan towards a slower rise.
    const worse = name === "swing" ? moved.change.low > 0 : moved.change.high < 0;
    found.push({
      kind,
      sentence: `${what} was ${printNumber(moved.before.estimate, 1)}\u00a0${unit} and has moved by ${said(moved.change, 2)}.`,
      speaks: worse ? "for" : "against",
    });
  }
  for (const { found: effect } of effects) {
    if (isFitFault(effect)) continue;
    found.push(
      !effect.isApart
        ? {
            kind: "season",
            sentence: "The air outside changed along with the offset, so that the two cannot be told apart.",
            speaks: "open",
          }
        : {
            kind: "season",
            sentence: `The air outside explains ${said(effect.overItsRange, 1)}\u00a0°C over its range; beside it the change is ${said(effect.drift, 1)}\u00a0°C.`,
            speaks: excludesZero(effect.drift) ? "against" : "for",
          },
    );
  }
  return found;
}
