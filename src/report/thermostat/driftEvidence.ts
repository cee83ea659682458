import { fitDriftModels } from "../../analysis/drift/driftModels.ts";
import { explainDrift } from "../../analysis/drift/explainDrift.ts";
import { isFitFault } from "../../analysis/fitFault.ts";
import type { Interval } from "../../analysis/regressionFit.ts";
import type { LoadRow } from "../loadRow.ts";
import type { DriftEvidence, OffsetPoint } from "../thermostatResult.ts";

const DAY = 86_400_000;

const excludesZero = ({ low, high }: Interval): boolean => low > 0 || high < 0;
/** A kind of which nothing is known yet. */
const nothing = {
  speaks: "open",
  change: null,
  before: null,
  beside: null,
  isAtEqualAir: false,
  unknown: null,
} as const;
/** A rise that has lost less than this share for certain clears heater and fan. Our own mark: one element of three takes more. */
const SLOWER_SHARE = 0.2;

/**
 * Contacts wear towards a wider swing. Where one switch point wears, the middle moves by half of what the swing grows, so that
 * a swing that grew by less than the middle moved does not explain it.
 */
function contactsSpeak({ low, high }: Interval, offset: Interval | null): DriftEvidence["speaks"] {
  const leastMoved =
    offset === null || !excludesZero(offset) ? 0 : Math.min(Math.abs(offset.low), Math.abs(offset.high));
  if (low > 0) return "for";
  return high < leastMoved ? "against" : "open";
}

/** A heater or fan weakens towards a slower rise; an interval that reaches far down tells nothing. */
function heaterSpeaks({ low, high }: Interval, before: number): DriftEvidence["speaks"] {
  if (low > -SLOWER_SHARE * before) return "against";
  return high < 0 ? "for" : "open";
}

/**
 * What speaks for which kind of change over the loads of the latest stretch: the swing of the cycles, the rise at full power,
 * the air outside. Evidence with its size; the reader judges.
 *
 * @param points offsets of the stretch, in time order
 * @param kilnRepairedAt the rise before this is of another heater or fan, and is not compared
 */
export function driftEvidence(
  points: readonly OffsetPoint[],
  rows: ReadonlyMap<string, LoadRow>,
  kilnRepairedAt: number = Number.NEGATIVE_INFINITY,
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
  const isAirKnown = air.every((celsius) => celsius !== null);
  const seasons = isAirKnown ? [{ name: "air", values: air }] : [];
  const [outside] = seasons;
  const {
    offsetChange,
    companions,
    seasons: effects,
  } = explainDrift(series, models, {
    companions: [
      { name: "swing", values: points.map(({ swingKelvin }) => swingKelvin) },
      {
        name: "rise",
        values: points.map(({ at, riseKelvinPerMinute }) => (at < kilnRepairedAt ? null : riseKelvinPerMinute)),
        ...(outside && { beside: outside }),
      },
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
    const isSwing = name === "swing";
    const speaks = isSwing ? contactsSpeak(change, offsetChange) : heaterSpeaks(change, before.estimate);
    const isAtEqualAir = !isSwing && outside !== undefined;
    found.push({ ...nothing, kind, speaks, change, before: before.estimate, isAtEqualAir });
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
