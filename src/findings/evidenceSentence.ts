import type { Interval } from "../analysis/regressionFit.ts";
import type { DriftEvidence } from "../report/thermostatResult.ts";
import { print } from "../units/print.ts";
import { shownAs } from "../units/quantity.ts";
import type { UnitSystem } from "../units/unitSystem.ts";

const QUANTITY = "temperatureDifference";

/** `−1.1 (−1.4 to −0.8) °C`, and what the unit is counted over. */
function moved({ estimate, low, high }: Interval, units: UnitSystem, decimals: number, per = ""): string {
  const bare = (kelvin: number): string => print(kelvin, QUANTITY, units, { signed: true, bare: true, decimals });
  return `${bare(estimate)} (${bare(low)} to ${bare(high)})\u00a0${shownAs(QUANTITY, units).unit}${per}`;
}

const UNREAD: Readonly<Record<NonNullable<DriftEvidence["unknown"]>, (measure: string) => string>> = {
  "too few": (measure) => `${measure} is read in too few of these loads to tell.`,
  together: (measure) => `${measure} changed along with the offset, so that the two cannot be told apart.`,
};

const MEASURE: Readonly<Record<DriftEvidence["kind"], string>> = {
  "set point": "The middle of the cycles",
  "worn contacts": "The swing of the cycles",
  "weak heater or fan": "The rise at full power",
  season: "The air outside",
};

/** The numbers behind one piece of evidence, in the reader's degrees; what they speak for stands beside it. */
export function evidenceSentence(evidence: DriftEvidence, units: UnitSystem): string {
  const { kind, change, before, beside, isAtEqualAir, unknown } = evidence;
  const measure = MEASURE[kind];
  if (unknown !== null) return UNREAD[unknown](measure);
  if (change === null) return `${measure} says nothing here.`;
  if (beside !== null) {
    return `${measure} explains ${moved(change, units, 1)} over its range; beside it the change is ${moved(beside, units, 1)}.`;
  }
  if (before === null) return `${measure} has moved by ${moved(change, units, 1)}.`;
  const per = kind === "weak heater or fan" ? " a minute" : "";
  const was = `${print(before, QUANTITY, units, { decimals: 2 })}${per}`;
  const equal = isAtEqualAir ? ", at equal air outside" : "";
  return `${measure} was ${was} and has moved by ${moved(change, units, 2, per)}${equal}.`;
}
