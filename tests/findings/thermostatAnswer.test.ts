import { describe, expect, it } from "vitest";
import type { LeavesTolerance } from "../../src/analysis/drift/leavesTolerance.ts";
import { leavesClause, leavesSentence, type ToleranceWords } from "../../src/findings/leavesSentence.ts";
import { plainText, type Sentence } from "../../src/findings/sentence.ts";
import { holdAnswer, thermostatAnswer, thermostatGrounds } from "../../src/findings/thermostatAnswer.ts";
import { besideSetPoint, degreesRange, type Reader, twoDates } from "../../src/findings/thermostatWords.ts";
import type { KilnThermostat, StretchModels, ThermostatStretch } from "../../src/report/thermostatResult.ts";
import { loadsOnAPlane } from "../support/loads.ts";
import { interval } from "../support/madeUpChart.ts";
import { madeUpKiln } from "../support/madeUpThermostat.ts";

const DAY = 86_400_000;
const metric: Reader = { units: "metric", timeZone: "UTC" };
const us: Reader = { units: "us", timeZone: "UTC" };
const said = (sentence: Sentence): string => plainText(sentence).replaceAll("\u00a0", " ");

// One load every five days from 6 January 2025, 60 of them; the change begins with the twelfth from the end.
const loadsOf = (count: number) => loadsOnAPlane(count, { intercept: 1, perPoint: 0.074, perMetre: 45, noise: 0.4 });
const loads = loadsOf(60);
const creeping = madeUpKiln(loads, "creep");
const stepped = madeUpKiln(loads, "step");
const steady = madeUpKiln(loads, "steady");

/** The kiln with the latest stretch of its drying hold seen otherwise. */
function seen(kiln: KilnThermostat, change: (stretch: ThermostatStretch) => ThermostatStretch): KilnThermostat {
  const { drying } = kiln;
  if (drying === null) throw new RangeError("the made-up kiln has a drying hold");
  const last = drying.stretches.length - 1;
  return {
    ...kiln,
    drying: { ...drying, stretches: drying.stretches.map((stretch, i) => (i === last ? change(stretch) : stretch)) },
  };
}

const modelled = (kiln: KilnThermostat, change: (models: StretchModels) => StretchModels): KilnThermostat =>
  seen(kiln, (stretch) => ({ ...stretch, models: stretch.models === null ? null : change(stretch.models) }));

describe("holdAnswer(kiln, hold, reader)", () => {
  it("says size, onset, rate, and when a creep leaves its tolerance", () => {
    // 1.1 K over the 55 days from 3 September to 28 October is 0.61 K in 30.44 days.
    expect(said(holdAnswer(creeping, "drying", metric))).toBe(
      "The drying thermostat has crept down 1.1 °C since the beginning of September, 0.61 °C a month, and will leave its tolerance between 17 November 2025 and 10 January 2026.",
    );
  });

  it("says differences in °F to a reader who wants them: 1.8 times as many, no 32 added", () => {
    expect(said(holdAnswer(creeping, "drying", us))).toContain(
      "crept down 2.0 °F since the beginning of September, 1.10 °F a month",
    );
  });

  it("says up where the offset rises", () => {
    const rising = modelled(creeping, (models) => ({
      ...models,
      kelvinPerMonth: interval(0.5, 0.3, 0.7),
      line: models.line.map(({ at }, i) => ({ at, kelvin: i < 2 ? 0.1 : 1 })),
    }));
    expect(said(holdAnswer(rising, "drying", metric))).toContain("crept up 0.9 °C");
  });

  it("dates a step and does not call it a creep", () => {
    const answer = said(holdAnswer(stepped, "drying", metric));
    expect(answer).toBe(
      "The drying thermostat stepped down 1.1 °C about 3 September 2025; for a year it should stay within its tolerance.",
    );
    expect(answer).not.toContain("month");
  });

  it("calls a hold steady since its calibration, and says where it holds", () => {
    expect(said(holdAnswer(steady, "drying", metric))).toBe(
      "The drying thermostat has been steady since its calibration on 10 March 2025, 0.1 °C above its set point.",
    );
  });

  it("gives no absolute number where the probe is not at the bulb", () => {
    const elsewhere = { probeAtBulb: false };
    expect(said(holdAnswer({ ...steady, ...elsewhere }, "drying", metric))).toBe(
      "The drying thermostat has been steady since its calibration on 10 March 2025.",
    );
    expect(said(holdAnswer({ ...creeping, ...elsewhere }, "drying", metric))).toContain(
      "and will have moved by more than its tolerance between",
    );
  });

  it("says that a steady hold is steadily outside its tolerance", () => {
    const outside = modelled(steady, (models) => ({
      ...models,
      leaves: { kind: "already-outside", side: -1, since: null, levelNow: interval(-1.9, -2.1, -1.7) },
    }));
    expect(said(holdAnswer(outside, "drying", metric))).toContain(
      "steady since its calibration on 10 March 2025, but 1.9 °C below its set point, outside its tolerance of 1.5 °C.",
    );
  });

  it("raises nothing from the models alone: without an alarm a creep that fits best is steady", () => {
    const silent = seen(creeping, (stretch) => ({
      ...stretch,
      alarm: stretch.alarm === null ? null : { ...stretch.alarm, alarms: [] },
    }));
    expect(said(holdAnswer(silent, "drying", metric))).toContain("has been steady");
  });

  it("says that a hold is steady again where its alarm ended by itself, and when", () => {
    const ended = seen(creeping, (stretch) => ({
      ...stretch,
      alarm: stretch.alarm && {
        ...stretch.alarm,
        alarms: stretch.alarm.alarms.map((alarm) => ({
          ...alarm,
          raisedAt: Date.UTC(2025, 4, 1),
          endedAt: Date.UTC(2025, 6, 3),
        })),
      },
    }));
    const answer = said(holdAnswer(ended, "drying", metric));
    expect(answer).toContain("is steady again");
    expect(answer).toContain("the alarm of 1 May 2025 ended by itself on 3 July 2025.");
    expect(answer).not.toContain("crept");
    expect(said(thermostatAnswer({ kilns: [{ ...ended, cure: null }] }, metric))).toBe(answer);
  });

  it("does not explain an alarm that no model explains", () => {
    const unexplained = modelled(creeping, (models) => ({ ...models, winner: "constant" }));
    expect(said(holdAnswer(unexplained, "drying", metric))).toContain(
      "has been running low since its calibration on 10 March 2025, neither in a step nor in a creep",
    );
  });

  it.each([
    [1, "The drying thermostat cannot be judged yet: 1 load since the first load."],
    [5, "The drying thermostat cannot be judged yet: 5 loads since the first load."],
    [14, "The drying thermostat cannot be judged yet: 1 load since its calibration on 10 March 2025."],
  ])("counts its loads where %i are too few", (count, answer) => {
    expect(said(holdAnswer(madeUpKiln(loadsOf(count)), "drying", metric))).toBe(answer);
  });

  it("says that none has been run since a calibration", () => {
    const fresh = seen(creeping, (stretch) => ({ ...stretch, loads: 0, alarm: null, models: null, tooLittle: "none" }));
    expect(said(holdAnswer(fresh, "drying", metric))).toBe(
      "The drying thermostat has run no load since its calibration on 10 March 2025.",
    );
  });
});

describe("thermostatAnswer(result, reader)", () => {
  it("is one sentence where both holds are steady since the same day", () => {
    expect(said(thermostatAnswer({ kilns: [steady] }, metric))).toBe(
      "The drying and the cure thermostat have been steady since their calibration on 10 March 2025.",
    );
  });

  it("is short on a cure that does what the drying hold does, unless it is outside sooner", () => {
    const { drying } = creeping;
    if (drying === null) throw new RangeError("the made-up kiln has a drying hold");
    const both: KilnThermostat = { ...creeping, cure: { ...drying, hold: "cure" } };
    expect(said(thermostatAnswer({ kilns: [both] }, metric))).toMatch(
      /The cure thermostat has crept likewise, down 1\.1 °C\.$/,
    );
    const dryingLater = modelled(both, (models) => ({
      ...models,
      leaves:
        models.leaves.kind === "dated" ? { ...models.leaves, earliest: models.leaves.earliest + DAY } : models.leaves,
    }));
    expect(said(thermostatAnswer({ kilns: [dryingLater] }, metric))).toMatch(
      /down 1\.1 °C, and may be outside sooner, from 17 November 2025 on\.$/,
    );
    expect(said(holdAnswer(both, "cure", metric))).toContain("The cure thermostat has crept down 1.1 °C since");
    // A load that was read in the drying hold alone lies after the cure's earliest date: that day is no forecast any more.
    const { cure } = dryingLater;
    const from = cure?.stretches.at(-1)?.models?.leaves;
    const lastRead = dryingLater.loads.at(-1);
    if (from?.kind !== "dated" || lastRead === undefined) throw new RangeError("the made-up cure has a date");
    const loads = [...dryingLater.loads, { ...lastRead, load: "later", loadedAt: from.earliest + DAY / 2 }];
    expect(said(thermostatAnswer({ kilns: [{ ...dryingLater, loads }] }, metric))).toMatch(
      /down 1\.1 °C, and may already have left its tolerance\.$/,
    );
  });

  it("names each kiln where there are several", () => {
    const answer = said(thermostatAnswer({ kilns: [creeping, { ...steady, kiln: "K2" }] }, metric));
    expect(answer).toContain("Kiln K1: The drying thermostat has crept");
    expect(answer).toContain("Kiln K2: The drying and the cure thermostat");
  });

  it("says why where there is nothing to judge", () => {
    expect(said(thermostatAnswer({ kilns: [] }, metric))).toContain("No readings of a kiln are logged yet");
    expect(said(thermostatAnswer({ kilns: [madeUpKiln([])] }, metric))).toBe("No load of this kiln has readings yet.");
  });

  it("names the logger before the thermostat where its check is too old", () => {
    const stale = { ...creeping, logger: { ...creeping.logger, stale: true, daysSinceCheck: 140.4 } };
    expect(said(thermostatAnswer({ kilns: [stale] }, metric))).toMatch(
      /^The logger may be the one that is off: it was last checked 140 days ago, where the house allows 100\. By its readings the drying thermostat has crept/,
    );
    const never = { ...creeping, logger: { ...creeping.logger, stale: true, daysSinceCheck: null } };
    expect(said(thermostatAnswer({ kilns: [never] }, metric))).toMatch(
      /^The logger may .*: no check of it is logged\./,
    );
  });

  it("leaves the logger out of the answer where nothing is alarmed, and says it in the grounds", () => {
    const stale = { ...steady, logger: { ...steady.logger, stale: true, daysSinceCheck: 140 } };
    expect(said(thermostatAnswer({ kilns: [stale] }, metric))).not.toContain("logger");
    expect(
      thermostatGrounds({ kilns: [stale] }, metric)
        .map(said)
        .join(" "),
    ).toContain("The logger may be the one");
  });
});

describe("leavesClause and leavesSentence", () => {
  const now = Date.UTC(2026, 9, 31);
  const words: ToleranceWords = { ...metric, toleranceKelvin: 1.5, probeAtBulb: true, now };
  const levelNow = interval(-1, -1.2, -0.8);
  const dated = { kind: "dated", side: -1, onlyIfCreep: false, levelNow } as const;
  const [soon, later, last] = [now + 81 * DAY, now + 100 * DAY, now + 135 * DAY];

  it.each<[string, LeavesTolerance, string, string]>([
    [
      "between two dates",
      { ...dated, earliest: soon, estimate: later, latest: last },
      ", and will leave its tolerance between 20 January and 15 March 2027",
      "If it goes on as it went it will leave its tolerance of 1.5 °C between 20 January and 15 March 2027 (95 % interval). The best guess is 8 February 2027.",
    ],
    [
      "from a date on, or never",
      { ...dated, earliest: soon, estimate: null, latest: null },
      ", and may leave its tolerance from 20 January 2027 on",
      "If it goes on as it went it may leave its tolerance of 1.5 °C on 20 January 2027 at the earliest, or never.",
    ],
    [
      "perhaps already, at the latest by a date",
      { ...dated, earliest: now - DAY, estimate: later, latest: last },
      ", and may already have left its tolerance, else it will by 15 March 2027",
      "It may already have left its tolerance of 1.5 °C; if it goes on as it went it will by 15 March 2027 (95 % interval).",
    ],
    [
      "perhaps already, perhaps never",
      { ...dated, earliest: now, estimate: null, latest: null },
      ", and may already have left its tolerance",
      "It may already have left its tolerance of 1.5 °C, or never do so.",
    ],
    [
      "only if this is a creep",
      { ...dated, onlyIfCreep: true, earliest: soon, estimate: null, latest: null },
      "; if this is a creep it may leave its tolerance from 20 January 2027 on",
      "it may leave its tolerance of 1.5 °C on 20 January 2027 at the earliest, or never.",
    ],
    [
      "outside since some day",
      { kind: "already-outside", side: -1, since: interval(now - 20 * DAY, now - 30 * DAY, now - 10 * DAY), levelNow },
      ", and has been outside its tolerance since the middle of October",
      "It is outside its tolerance of 1.5 °C, since a day between 1 October and 21 October 2026.",
    ],
    [
      "outside, since when is unknown",
      { kind: "already-outside", side: -1, since: null, levelNow },
      ", and is outside its tolerance",
      "It is outside its tolerance of 1.5 °C.",
    ],
    [
      "not for a year",
      { kind: "not-within-horizon", horizonDays: 365, levelNow },
      "; for a year it should stay within its tolerance",
      "For a year after the last load it should stay within its tolerance of 1.5 °C.",
    ],
    [
      "not for some days",
      { kind: "not-within-horizon", horizonDays: 90, levelNow },
      "; for 90 days it should stay within its tolerance",
      "For 90 days after the last load",
    ],
    [
      "unknown, its level being uncertain",
      { kind: "cannot-be-told", why: "level-straddles", levelNow },
      "; when it will leave its tolerance cannot be told yet",
      "cannot be told: its level is not known well enough",
    ],
    [
      "unknown, a creep being possible",
      { kind: "cannot-be-told", why: "creep-not-excluded", levelNow },
      "; when it will leave its tolerance cannot be told yet",
      "cannot be told: too few loads to rule out that it creeps.",
    ],
    [
      "unknown, the alarm being unexplained",
      { kind: "cannot-be-told", why: "alarm-unexplained", levelNow },
      "; when it will leave its tolerance cannot be told yet",
      "cannot be told: something has changed, and neither",
    ],
  ])("says %s", (_, leaves, clause, sentence) => {
    expect(said(leavesClause(leaves, words))).toBe(clause);
    expect(said(leavesSentence(leaves, words))).toContain(sentence);
    expect(said(leavesSentence(leaves, words))).toMatch(
      /^When last read it held 1\.0 °C below its set point \(95 % interval −1\.2 to −0\.8 °C\)\. /,
    );
  });

  it("speaks of a move alone where the probe is not at the bulb", () => {
    const elsewhere = { ...words, probeAtBulb: false };
    const leaves: LeavesTolerance = { ...dated, earliest: soon, estimate: later, latest: last };
    expect(said(leavesSentence(leaves, elsewhere))).toMatch(
      /^If it goes on as it went it will have moved by more than/,
    );
    const stays: LeavesTolerance = { kind: "not-within-horizon", horizonDays: 365, levelNow };
    expect(said(leavesClause(stays, elsewhere))).toBe(
      "; for a year it should stay within its tolerance of where it was",
    );
  });
});

describe("thermostat words", () => {
  it("say a level without sign, and nothing at all where it rounds to none", () => {
    expect(besideSetPoint(-0.42, "metric")).toBe("0.4\u00a0°C below its set point");
    expect(besideSetPoint(0.42, "metric")).toBe("0.4\u00a0°C above its set point");
    expect(besideSetPoint(-0.04, "metric")).toBe("at its set point");
  });

  it("say a range of sizes from the smaller to the larger, whatever their sign", () => {
    expect(degreesRange(-0.7, -0.4, "metric")).toBe("0.4 to 0.7\u00a0°C");
    expect(degreesRange(0.4, 0.7, "metric")).toBe("0.4 to 0.7\u00a0°C");
  });

  it("name the year once where two dates share it", () => {
    expect(twoDates(Date.UTC(2027, 0, 20), Date.UTC(2027, 2, 15), "UTC")).toBe("20 January and 15 March 2027");
    expect(twoDates(Date.UTC(2026, 11, 20), Date.UTC(2027, 2, 15), "UTC")).toBe("20 December 2026 and 15 March 2027");
  });
});
