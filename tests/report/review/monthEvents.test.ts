import { describe, expect, it } from "vitest";
import type { ChangeResult, ChangeVerdict } from "../../../src/report/changesResult.ts";
import type { EventRow } from "../../../src/report/eventRow.ts";
import { monthEvents } from "../../../src/report/review/monthEvents.ts";
import { handMadeChange, handMadeEffect } from "../../support/handMadeChange.ts";

const event = (on: string, kind: string): EventRow => ({
  on: Date.parse(`${on}T00:00:00Z`),
  kind,
  scope: "kiln",
  what: `${kind} of ${on}`,
  alters: null,
});
const events = [
  event("2026-02-27", "repair"),
  event("2026-03-02", "repair"),
  event("2026-04-30", "incident"),
  event("2026-05-01", "change"),
  event("2026-05-31", "calibration"),
];
const helped = (judged: EventRow): ChangeResult => ({ ...handMadeChange, event: judged });

describe("monthEvents(events, month, judge, ids)", () => {
  it("tells what was logged in the month, and what was changed or repaired in the two before it", () => {
    const asked: EventRow[] = [];
    const judge = (judged: readonly EventRow[]): readonly ChangeResult[] => {
      asked.push(...judged);
      return judged.map(helped);
    };
    const found = monthEvents(events, "2026-05", judge, new Map([[events[3] as EventRow, "change-2026-05-01"]]));
    expect(found.events.map(({ event: { what } }) => what)).toEqual([
      "change of 2026-05-01",
      "calibration of 2026-05-31",
    ]);
    expect(found.events.map(({ changeId }) => changeId)).toEqual(["change-2026-05-01", null]);
    // An incident passes; February is three months ago.
    expect(found.earlier.map(({ event: { what } }) => what)).toEqual(["repair of 2026-03-02"]);
    expect(asked.map(({ kind }) => kind)).toEqual(["repair", "change", "calibration"]);
  });

  it("shows what helped, hurt or moved first, else what is nearest to the scope; without its points", () => {
    const measured = (...verdicts: readonly ChangeVerdict[]) =>
      monthEvents(
        events,
        "2026-05",
        (judged) =>
          judged.map((one) => ({
            ...helped(one),
            effects: verdicts.map((verdict, at) => ({ ...handMadeEffect, verdict, runsBefore: at })),
          })),
        new Map(),
      ).events[0]?.effect;
    expect(measured("cannot be told", "no difference", "hurt", "helped")?.runsBefore).toBe(3);
    expect(measured("cannot be told", "no difference")?.runsBefore).toBe(0);
    expect(measured("helped")?.points).toEqual([]);
  });

  it("says why a change cannot be compared, and nothing of a calibration that could not show", () => {
    const bare = (judged: readonly EventRow[]): readonly ChangeResult[] =>
      judged.map((one) => ({ ...helped(one), effects: [], lacking: [], tooLittle: "Too few." }));
    const [change, calibration] = monthEvents(events, "2026-05", bare, new Map()).events;
    expect([change?.tooLittle, calibration?.tooLittle]).toEqual(["Too few.", null]);
    expect(monthEvents(events, "2026-05", bare, new Map()).earlier).toEqual([]);
  });
});
