import { fitDriftModels } from "../../analysis/drift/driftModels.ts";
import { explainDrift } from "../../analysis/drift/explainDrift.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import type { LoadRow } from "../loadRow.ts";
import type { DriftEvidence, OffsetPoint } from "../thermostatResult.ts";

const DAY = 86_400_000;

const excludesZero = ({ low, high }: Interval): boolean => low > 0 || high < 0;
/** A kind of which nothing is known yet. */
const nothing = { speaks: "open", change: null, before: null, beside: null, unknown: null } as const;

/**
 * What speaks for which kind of change over the loads of the latest stretch: the swing of the cycles, the rise at full power,
 * the air outside. Evidence with its size; the reader judges.
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
    const speaks = excludesZero(offsetChange) ? "for" : "open";
    found.push({ ...nothing, kind: "set point", speaks, change: offsetChange });
  }
  for (const { name, found: moved } of companions) {
    const kind = name === "swing" ? "worn contacts" : "weak heater or fan";
    if (isFitFault(moved)) {
      found.push({ ...nothing, kind, unknown: "too few" });
      continue;
    }
    const { change, before } = moved;
    // Contacts wear towards a wider swing, a heater or fan towards a slower rise.
    const worse = name === "swing" ? change.low > 0 : change.high < 0;
    found.push({ ...nothing, kind, speaks: worse ? "for" : "against", change, before: before.estimate });
  }
  for (const { found: effect } of effects) {
    if (isFitFault(effect)) continue;
    if (!effect.isApart) {
      found.push({ ...nothing, kind: "season", unknown: "together" });
      continue;
    }
    const { overItsRange: change, drift: beside } = effect;
    found.push({ ...nothing, kind: "season", speaks: excludesZero(beside) ? "against" : "for", change, beside });
  }
  return found;
}
