import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  withFixed,
  withoutPart,
  withPart,
  withProbe,
  withUnit,
  withUse,
  withWord,
} from "../../../src/tables/foreign/draft/changeDraft.ts";
import { draftMatches } from "../../../src/tables/foreign/draft/draftMatches.ts";
import { draftOf } from "../../../src/tables/foreign/draft/draftOf.ts";
import { draftOfMatches } from "../../../src/tables/foreign/draft/draftOfMatches.ts";
import { headingChoices, useOf } from "../../../src/tables/foreign/draft/headingChoices.ts";
import { columnOf, type MatchDraft } from "../../../src/tables/foreign/draft/matchDraft.ts";
import { unitChoices } from "../../../src/tables/foreign/draft/unitChoices.ts";
import type { ForeignMatch } from "../../../src/tables/foreign/foreignMatch.ts";
import { readMatches } from "../../../src/tables/foreign/readMatches.ts";
import { layoutAsSaid, type SampleLayout, sampleLayout } from "../../../src/tables/foreign/sampleLayout.ts";
import { writeMatches } from "../../../src/tables/foreign/writeMatches.ts";
import { readHouse } from "../../../src/tables/readHouse.ts";

const { house } = readHouse('time_zone = "Europe/Berlin"\n[[kilns]]\nid = "K1"\n[[kilns]]\nid = "K2"\n');

const TEXTS: readonly string[] = [
  "Batch;Grain lot;Grain (t);Steep on;Kiln in;Kiln out;Bed depth (cm);Ambient;Moisture;Mood\n" +
    "007;L1;0,45;1.3.2026 06:00;6.3.2026 08:00;6.3.2026 20:30;17,5;4,5;4,5;calm\n" +
    "008;L1;0,5;14.3.2026 06:00;;;;;;sour\n",
  "Logger 7\nsince May\nDate,Clock,K1 inlet,K2 inlet,K1 burner,K1 burner\n,,°C,°C,,\n" +
    "2026-03-08,10:00,54.5,60.5,closed,x\n2026-03-08,10:01,55,61,open,y\n",
  "When,Sensor,Reading\n2026-03-08 10:00,A,54.5 °C\n2026-03-08 10:00,B,40 °C\n2026-03-08 10:01,A,55 °C\n",
];

const laidOut = (text: string): SampleLayout => {
  const sample = sampleLayout(text);
  if (sample === null) throw new RangeError("the text holds no table");
  return sample;
};

/** One thing that somebody may say on the page, by numbers that any draft can be asked with. */
const step = fc.record({
  kind: fc.constantFrom("use", "use", "use", "unit", "word", "part", "without", "fix", "probe", "dates"),
  place: fc.nat(9),
  pick: fc.nat(200),
});

function said(
  draft: MatchDraft,
  { kind, place: wanted, pick }: { kind: string; place: number; pick: number },
): MatchDraft {
  const place = wanted % draft.headings.length;
  const one = <T>(choices: readonly T[]): T | undefined => choices[pick % choices.length];
  const heading = draft.headings[place];
  const part = one(draft.parts);
  if (kind === "use") {
    const keys = headingChoices(draft, place).flatMap(({ choices }) => choices.map(({ key }) => key));
    return withUse(draft, place, useOf(one(keys) ?? "unread"), house);
  }
  if (kind === "unit" && heading) {
    const column = columnOf(draft, heading);
    return column ? withUnit(draft, place, one(unitChoices(column))?.key ?? "") : draft;
  }
  if (kind === "word" && heading) {
    const word = one([...heading.words.keys()]);
    return word === undefined ? draft : withWord(draft, place, word, one(["", "1", "0"]) ?? "");
  }
  if (kind === "part") return withPart(draft, one(["readings", "kilning", "lab", "weather"] as const) ?? "lab", house);
  if (kind === "without" && part && draft.parts.length > 1) return withoutPart(draft, part.id);
  if (kind === "fix" && part) return withFixed(draft, part.id, "kiln", one(["K1", "K2", ""]) ?? "");
  if (kind === "probe") {
    const probe = one(draft.probes);
    return probe ? withProbe(draft, probe.name, one(["air_on", "bed", null]) ?? null, "") : draft;
  }
  return { ...draft, dateOrder: one(["ymd", "dmy", "mdy"] as const) ?? "ymd", shortYears: pick > 100 };
}

/** All but what is not wanted: of that there may be more, since somebody has seen it. */
const meant = (matches: readonly ForeignMatch[]) => matches.map((match) => ({ ...match, ignore: [] }));

describe("draftOfMatches(path, sample, matches, house)", () => {
  test("gives back a draft that makes the very matches, whatever was said of the file before they were saved", () => {
    fc.assert(
      fc.property(fc.constantFrom(...TEXTS), fc.array(step, { maxLength: 12 }), (text, steps) => {
        const start = draftOf("f.csv", laidOut(text), null, house);
        const draft = steps.reduce(said, start.parts.length > 0 ? start : withPart(start, "readings", house));
        const saved = readMatches(writeMatches(draftMatches(draft, "f*.csv"))).matches;
        fc.pre(saved.length === draft.parts.length);
        const first = saved[0] as ForeignMatch;
        const sample = layoutAsSaid(text, first.delimiter ?? ",", first.skipLines + 1, first.skipAfterHeadings);
        const again = draftOfMatches("f.csv", sample as SampleLayout, saved, house);
        expect(again).not.toBeNull();
        const made = draftMatches(again as MatchDraft, "f*.csv");
        expect(meant(made)).toEqual(meant(saved));
        expect(made.flatMap(({ ignore }) => ignore)).toEqual(
          expect.arrayContaining(saved.flatMap(({ ignore }) => [...ignore])),
        );
      }),
      { numRuns: 150 },
    );
  });

  const text = "When,Inlet,Burner\n2026-03-08 10:00,54.5,closed\n2026-03-08 10:01,55,open\n";
  const drafted = (toml: string) =>
    draftOfMatches("a.csv", laidOut(text), readMatches(`[[match]]\nfiles = "a.csv"\n${toml}`).matches, house);

  test("shows what stands in a file written by hand: places, other spellings, and words that nobody has said yet", () => {
    const draft = drafted(
      'table = "readings"\nignore = ["Door", "inlet 2"]\n[match.fixed]\nkiln = "K2"\n' +
        '[match.columns]\nat = 1\nair_on_f = "INLET"\nheater_on = { from = "Burner", words = { closed = "1" } }\n',
    );
    expect(draft?.headings.map(({ use, unit }) => [use, unit])).toEqual([
      [{ kind: "column", part: "readings", stem: "at" }, "at"],
      [{ kind: "column", part: "readings", stem: "air_on" }, "air_on_f"],
      [{ kind: "column", part: "readings", stem: "heater_on" }, "heater_on"],
    ]);
    expect(draft?.headings[2]?.words).toEqual(
      new Map([
        ["closed", "1"],
        ["open", ""],
      ]),
    );
    expect(draft?.parts[0]?.fixed).toEqual(new Map([["kiln", "K2"]]));
    expect(draftMatches(draft as MatchDraft, "a.csv")[0]?.ignore).toEqual(["Door", "inlet 2"]);
  });

  test.each([
    ["a column that the file does not have", 'table = "readings"\n[match.columns]\nat = "When"\nair_on_c = "Air"\n'],
    [
      "a factor of its own",
      'table = "readings"\n[match.columns]\nat = "When"\nair_on_c = { from = "Inlet", times = 0.1 }\n',
    ],
    ["one column for two things", 'table = "readings"\n[match.columns]\nair_on_c = "Inlet"\nbed_c = "Inlet"\n'],
    ["no headings", 'table = "readings"\nheadings = false\n[match.columns]\nat = 1\nair_on_c = 2\n'],
  ])("is null for %s, which no draft can say", (_, toml) => {
    expect(drafted(toml)).toBeNull();
  });

  test("is asked for a match", () => {
    expect(() => draftOfMatches("a.csv", laidOut(text), [], house)).toThrow(RangeError);
  });
});
