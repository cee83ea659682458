import { type AwkwardFile, houseIn, kilningOf } from "./awkwardFile.ts";

const berlin = houseIn("Europe/Berlin");

const night = (zone: string, place: string, times: readonly string[], expected: readonly string[]): AwkwardFile => ({
  what: `a logger through ${place}`,
  house: houseIn(zone),
  files: { "readings/a.csv": `kiln,at,air_on_c\n${times.map((time, i) => `K1,${time},${50 + i}`).join("\n")}\n` },
  table: "readings",
  expected: { at: expected, air_on_c: times.map((_, i) => 50 + i) },
});

/** Nights on which the clocks change. */
export const awkwardClocks: readonly AwkwardFile[] = [
  night(
    "Europe/Berlin",
    "the doubled hour of the north",
    ["2026-10-25 01:30", "2026-10-25 02:30", "2026-10-25 02:30", "2026-10-25 03:30"],
    ["2026-10-24T23:30Z", "2026-10-25T00:30Z", "2026-10-25T01:30Z", "2026-10-25T02:30Z"],
  ),
  night(
    "Australia/Sydney",
    "the doubled hour of the south",
    ["2026-04-05 01:30", "2026-04-05 02:30", "2026-04-05 02:30", "2026-04-05 03:30"],
    ["2026-04-04T14:30Z", "2026-04-04T15:30Z", "2026-04-04T16:30Z", "2026-04-04T17:30Z"],
  ),
  night(
    "Australia/Lord_Howe",
    "a doubled half hour",
    ["2026-04-05 01:20", "2026-04-05 01:40", "2026-04-05 01:40", "2026-04-05 02:10"],
    ["2026-04-04T14:20Z", "2026-04-04T14:40Z", "2026-04-04T15:10Z", "2026-04-04T15:40Z"],
  ),
  {
    what: "a time in the missing hour of the north",
    house: houseIn("America/Chicago"),
    files: { "kilning.csv": kilningOf("R1,K1,2026-03-08 02:30,,17.5,\nR2,K1,2026-03-08 03:30,,17.5,\n") },
    table: "kilning",
    expected: { run: ["R2"], loaded_at: ["2026-03-08T08:30Z"] },
    problems: ["missing-hour"],
  },
  {
    what: "a time in the missing hour of the south",
    house: houseIn("Pacific/Auckland"),
    files: { "kilning.csv": kilningOf("R1,K1,2026-09-27 02:30,,17.5,\nR2,K1,2026-09-27 03:30,,17.5,\n") },
    table: "kilning",
    expected: { run: ["R2"], loaded_at: ["2026-09-26T14:30Z"] },
    problems: ["missing-hour"],
  },
  {
    what: "offsets and Z, taken at their word",
    house: berlin,
    files: { "kilning.csv": kilningOf("R1,K1,2026-10-25T02:30+02:00,2026-10-25T12:00Z,17.5,\n") },
    table: "kilning",
    expected: { loaded_at: ["2026-10-25T00:30Z"], unloaded_at: ["2026-10-25T12:00Z"] },
  },
];
