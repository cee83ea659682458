import type { HoldJudgement, KilnThermostat, ProbeEvidence } from "../report/thermostatResult.ts";
import { print } from "../units/print.ts";
import { shownAs } from "../units/quantity.ts";
import { listed } from "./counted.ts";
import { holdVerdict, isAlarmed } from "./holdVerdict.ts";
import { type Sentence, strong } from "./sentence.ts";
import type { Reader } from "./thermostatWords.ts";

const NAME: Readonly<Record<ProbeEvidence["probe"], string>> = {
  air_off: "The air that leaves the bed",
  bed: "The probe in the bed",
};
const WHEN: Readonly<Record<HoldJudgement["hold"], string>> = {
  drying: "early in the drying hold",
  cure: "in the last hour of the cure",
};

/**
 * Whether the probes that are not the thermostat's moved with the change that is alarmed, a sentence each; where none is logged,
 * what logging one would tell. Empty where nothing is alarmed.
 */
export function probeSentences(kiln: KilnThermostat, { units }: Reader): readonly Sentence[] {
  const alarmed = [kiln.drying, kiln.cure].filter((hold) => hold !== null && isAlarmed(holdVerdict(hold)));
  const judged = alarmed.flatMap((hold) =>
    hold === null ? [] : hold.probes.map((probe) => ({ hold: hold.hold, ...probe })),
  );
  if (judged.length === 0) return [];
  const logged = judged.filter(({ loads }) => loads > 0);
  if (logged.length === 0) {
    return [
      [
        "Neither the air off the bed nor the bed itself is logged. A probe there would tell: it moves along where the thermostat has moved, and stays where only the probe at air on reads otherwise.",
      ],
    ];
  }
  const signed = (kelvin: number, bare = false): string =>
    print(kelvin, "temperatureDifference", units, { signed: true, bare });
  const told = logged.filter(({ speaks }) => speaks !== "open");
  const open = logged.filter(({ speaks }) => speaks === "open");
  const said = told.map(({ hold, probe, speaks, change, airOnKelvin, leastKelvin }): Sentence => {
    const where = `${NAME[probe]}, ${WHEN[hold]}, `;
    const { estimate, low, high } = change ?? { estimate: 0, low: 0, high: 0 };
    const size = `${signed(estimate, true)} (${signed(low, true)} to ${signed(high, true)})\u00a0${shownAs("temperatureDifference", units).unit}`;
    const beside = `at equal air outside, where air on moved ${signed(airOnKelvin)}`;
    return speaks === "thermostat"
      ? [where, strong("moved with it"), `: ${size} ${beside}. That speaks for the thermostat.`]
      : [
          where,
          strong("did not move with it"),
          `: ${size} ${beside}, and with a thermostat would have moved ${signed(leastKelvin)} at the least. That speaks for the logger’s probe at air on.`,
        ];
  });
  const untold = open.map(({ hold, probe }) => `${uncapitalised(NAME[probe])} ${WHEN[hold]}`);
  return [
    ...said,
    ...(untold.length === 0
      ? []
      : [[`Too uneven from load to load, or in too few loads, to tell: ${listed(untold)}.`]]),
    ["All these probes hang on one logger: a fault of the whole of it would move them alike."],
  ];
}

const uncapitalised = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** Holds whose alarm no other probe bears out, and one speaks against: the logger is then to be suspected first. */
export function probesAgainst(kiln: KilnThermostat): boolean {
  const alarmed = [kiln.drying, kiln.cure].filter((hold) => hold !== null && isAlarmed(holdVerdict(hold)));
  const speak = new Set(alarmed.flatMap((hold) => hold?.probes.map(({ speaks }) => speaks) ?? []));
  return speak.has("logger") && !speak.has("thermostat");
}
