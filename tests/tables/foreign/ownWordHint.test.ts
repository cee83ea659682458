import { describe, expect, test } from "vitest";
import { logsOf, valuesOf } from "../logsOf.ts";

const match = (line: string): string =>
  `[[match]]\nfiles = "relay.csv"\ntable = "readings"\n[match.fixed]\nkiln = "K1"\n[match.columns]\nat = "Time"\nair_on_c = "Inlet"\n${line}\n`;
const relay = (last: string): string =>
  `Time,Inlet,Burner "A"\n2026-03-08 10:00,54.5,closed\n2026-03-08 10:01,55,${last}\n`.replace('"A"', "A");
const SAID = 'heater_on = { from = "Burner A", words = { closed = "1" } }';

const read = (line: string, last: string) => logsOf({ "columns.toml": match(line), "relay.csv": relay(last) });

describe("withOwnWordHint", () => {
  test("tells the line of columns.toml that takes in a relay's word which comes first long after the file was matched", async () => {
    const [problem, ...more] = (await read(SAID, "tripped")).problems.filter(({ rule }) => rule !== "house-missing");
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ file: "relay.csv", line: 3, rule: "not-a-flag", value: "tripped" });
    const line = /columns\.toml what it means, 1 for on or 0 for off: (.*)$/.exec(problem?.hint ?? "")?.[1] ?? "";
    // The line, pasted over the old one, is all there is to do.
    const mended = await read(line, "tripped");
    expect(mended.problems.filter(({ file }) => file === "relay.csv" || file === "columns.toml")).toEqual([]);
    expect(valuesOf(mended, "readings", "heater_on")).toEqual([1, 1]);
  });

  test("says of a date in another language's words that months go as numbers, and of one in another order where to say it", async () => {
    const hintOf = async (when: string) => {
      const text = `Time,Inlet\n${when},54.5\n`;
      const { problems } = await logsOf({ "columns.toml": match(""), "relay.csv": text });
      return problems.find(({ rule }) => rule === "not-a-date")?.hint;
    };
    expect(await hintOf("3. Mai 2026 10:00")).toMatch(/^Names of months are read in English/);
    expect(await hintOf("8/3/26/1 10:00")).toMatch(/^Say in columns\.toml how the file writes its dates/);
  });

  test("leaves the hints of files in the log format as they are", async () => {
    const { problems } = await logsOf({
      "readings/a.csv": "kiln,at,air_on_c,heater_on\nK1,2026-03-08 06:00,40,tripped\n",
    });
    expect(problems.find(({ rule }) => rule === "not-a-flag")?.hint).toBe("Write 1 for on and 0 for off.");
  });
});
