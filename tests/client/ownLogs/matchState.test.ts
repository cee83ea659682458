import { describe, expect, it } from "vitest";
import { matchState } from "../../../src/client/ownLogs/matchState.ts";
import { withFixed, withPart, withUnit, withUse } from "../../../src/tables/foreign/draft/changeDraft.ts";
import { draftOf } from "../../../src/tables/foreign/draft/draftOf.ts";
import type { MatchDraft } from "../../../src/tables/foreign/draft/matchDraft.ts";
import { sampleLayout } from "../../../src/tables/foreign/sampleLayout.ts";
import { readHouse } from "../../../src/tables/readHouse.ts";

const { house } = readHouse('time_zone = "Europe/Berlin"\n[[kilns]]\nid = "K1"\n[[kilns]]\nid = "K2"\n');

function drafted(text: string, own = house): MatchDraft {
  const sample = sampleLayout(text);
  if (sample === null) throw new RangeError("the text holds no table");
  return draftOf("f.csv", sample, null, own);
}

const shown = (draft: MatchDraft, turned: readonly number[] = [], own = house) =>
  matchState(
    {
      key: "f.csv",
      paths: ["f.csv"],
      draft,
      isTaken: false,
      isGiven: false,
      canGoBack: false,
      turned: new Set(turned),
      previews: [],
      said: null,
    },
    own,
  );

const LOGGER = "Logger 7\n\nTime;Inlet;Relay;\n1.3.2026 10:00;54,5;closed;\n2.3.2026 10:01;54,6;open;\n";
const SHEET =
  "Batch,Lot,Grain kg,Steep on,Mood,Colour of the sky above the yard\n26-1,L1,350,2026-03-01 06:00,calm,a clear and rather cold blue\n";

describe("matchState(matched, house)", () => {
  it("says how the file is laid out, counting lines from 1", () => {
    const { layout, decimal } = shown(drafted(LOGGER));
    expect(layout).toMatchObject({ delimiter: ";", headingsLine: 3, linesUnder: 0 });
    expect(layout.said).toBe("Headings in line 3; semicolons between the columns.");
    expect(layout.delimiters.map(({ key }) => key)).toEqual([";", ",", "\t", "|"]);
    expect(decimal).toBe(",");
  });

  it("says of each column what it is, with its unit, and leaves out those without heading and value", () => {
    const draft = drafted(LOGGER);
    const read = withUnit(
      withUse(draft, 1, { kind: "column", part: "readings", stem: "air_on" }, house),
      1,
      "air_on_f",
    );
    const { columns } = shown(read, [1]);
    expect(columns.map(({ heading }) => heading)).toEqual(["Time", "Inlet", "Relay"]);
    expect(columns[1]).toMatchObject({ isRead: true, isOpen: true, unit: "air_on_f", why: "as chosen" });
    expect(columns[1]?.said).toMatch(/°F$/);
    expect(columns[1]?.units.map(({ label }) => label)).toEqual(["°C", "°F"]);
    expect(columns[0]).toMatchObject({ isOpen: false, why: "by its heading" });
  });

  it("asks what the file's own words mean", () => {
    const draft = withUse(drafted(LOGGER), 2, { kind: "column", part: "readings", stem: "heater_on" }, house);
    const relay = shown(draft).columns[2];
    expect(relay?.words.map(({ found, meant }) => [found, meant])).toEqual([
      ["closed", ""],
      ["open", ""],
    ]);
    expect(relay?.words[0]?.choices).toEqual([
      { key: "1", label: "on" },
      { key: "0", label: "off" },
    ]);
    expect(relay?.doubts).toEqual([expect.stringContaining("what these words mean")]);
  });

  it("shows three values of a column at most, and fewer where they are long", () => {
    const rows = ["a", "b", "c", "d"].map((word) => `${word},${word.repeat(20)},1\n`).join("");
    const { columns } = shown(withPart(drafted(`Mood,Word,No\n${rows}`), "steeping", house));
    expect(columns.slice(0, 2).map(({ examples }) => examples)).toEqual([["a", "b", "c"], ["a".repeat(20)]]);
  });

  it("asks for the kiln where no column says it, in doubt only while the house has several", () => {
    const [kiln] = shown(drafted(LOGGER)).fixed;
    expect(kiln).toMatchObject({ stem: "kiln", known: ["K1", "K2"] });
    expect(kiln?.doubt).toBe("No column says which kiln it is.");
    const one = readHouse('[[kilns]]\nid = "K1"\n').house;
    expect(shown(drafted(LOGGER, one), [], one).fixed[0]).toMatchObject({ value: "K1", doubt: null });
  });

  it("tells two parts of one table apart by their kilns, in the list and over their fields", () => {
    const both = withPart(drafted(LOGGER), "readings", house);
    const named = withFixed(withFixed(both, "readings", "kiln", "K1"), "readings 2", "kiln", "K2");
    const { parts, fixed } = shown(named);
    expect(parts.map(({ label }) => label)).toEqual(["Kiln logger, K1", "Kiln logger, K2"]);
    expect(new Set(fixed.map(({ label }) => label)).size).toBe(fixed.length);
  });

  it("asks for the order of day and month only where dates are read, and is in doubt until the rows prove it", () => {
    expect(shown(drafted(LOGGER)).dates).toMatchObject({ order: "dmy" });
    expect(shown(drafted(LOGGER)).dates?.doubt).not.toBeNull();
    expect(shown(drafted(LOGGER.replace("2.3.2026", "22.3.2026"))).dates?.doubt).toBeNull();
    expect(shown(withUse(drafted(LOGGER), 0, { kind: "unread" }, house)).dates).toBeNull();
  });

  it("keeps beside the batch what a sheet of batches has and nobody knows", () => {
    const mood = shown(drafted(SHEET)).columns.find(({ heading }) => heading === "Mood");
    expect(mood).toMatchObject({ use: "kept", isRead: false, why: "" });
  });
});
