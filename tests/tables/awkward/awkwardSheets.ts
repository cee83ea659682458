import { type AwkwardFile, houseIn, kilningOf } from "./awkwardFile.ts";

const windows1252 = (text: string): Uint8Array =>
  Uint8Array.from(text, (character) => ({ "€": 0x80, "–": 0x96, "’": 0x92 })[character] ?? character.charCodeAt(0));
const utf16 = (text: string, order: "le" | "be", mark: boolean): Uint8Array => {
  const bytes = Buffer.from(`${mark ? "\ufeff" : ""}${text}`, "utf16le");
  return new Uint8Array(order === "be" ? bytes.swap16() : bytes);
};
const berlin = houseIn("Europe/Berlin");
const row = { run: ["R1"], loaded_at: ["2026-03-06T07:00Z"], unloaded_at: ["2026-03-06T19:30Z"], bed_depth_m: [0.175] };
const GERMAN = "run;kiln;loaded_at;unloaded_at;bed_depth_cm;note\nR1;K1;06.03.2026 08:00;06.03.2026 20:30;17,5;grün\n";
const dmy = houseIn("Europe/Berlin", 'date_order = "dmy"\n');
const declare = (path: string, what: string): string => `${dmy}[files."${path}"]\n${what}\n`;

/** What spreadsheets of several countries export. */
export const awkwardSheets: readonly AwkwardFile[] = [
  {
    what: "a German export: semicolons, decimal commas, days first",
    house: dmy,
    files: { "kilning.csv": GERMAN },
    table: "kilning",
    expected: { ...row, note: ["grün"] },
  },
  {
    what: "the same with a byte order mark and CRLF",
    house: dmy,
    files: { "kilning.csv": `\ufeff${GERMAN.replaceAll("\n", "\r\n")}` },
    table: "kilning",
    expected: { ...row, note: ["grün"] },
  },
  {
    what: "the same in Windows-1252, declared",
    house: declare("kilning.csv", 'encoding = "windows-1252"'),
    files: { "kilning.csv": windows1252(GERMAN) },
    table: "kilning",
    expected: { ...row, note: ["grün"] },
  },
  {
    what: "the same in Windows-1252, not declared",
    house: dmy,
    files: { "kilning.csv": windows1252(GERMAN) },
    table: "kilning",
    expected: {},
    problems: ["wrong-encoding"],
  },
  {
    what: "the same in UTF-16, low byte first, marked",
    house: dmy,
    files: { "kilning.csv": utf16(GERMAN, "le", true) },
    table: "kilning",
    expected: { ...row, note: ["grün"] },
  },
  {
    what: "the same in UTF-16, high byte first, marked",
    house: dmy,
    files: { "kilning.csv": utf16(GERMAN, "be", true) },
    table: "kilning",
    expected: { ...row, note: ["grün"] },
  },
  {
    what: "the same in UTF-16 without a mark",
    house: dmy,
    files: { "kilning.csv": utf16(GERMAN.replace("grün", "green"), "le", false) },
    table: "kilning",
    expected: {},
    problems: ["wrong-encoding"],
  },
  {
    what: "UTF-16 without a mark, declared",
    house: declare("kilning.csv", 'encoding = "utf-16le"'),
    files: { "kilning.csv": utf16(GERMAN, "le", false) },
    table: "kilning",
    expected: row,
  },
  {
    what: "Unicode text from a spreadsheet: UTF-16 and tabs",
    house: dmy,
    files: { "kilning.csv": utf16(GERMAN.replaceAll(";", "\t"), "le", true) },
    table: "kilning",
    expected: row,
  },
  {
    what: "a line that names the delimiter",
    house: dmy,
    files: { "kilning.csv": `sep=;\r\n${GERMAN}` },
    table: "kilning",
    expected: row,
  },
  {
    what: "a British export: days first, commas, decimal points",
    house: dmy,
    files: { "kilning.csv": kilningOf("R1,K1,06/03/2026 08:00,06/03/2026 20:30,17.5,\n") },
    table: "kilning",
    expected: row,
  },
  {
    what: "a US export: months first, a twelve-hour clock, inches",
    house: houseIn("America/Chicago", 'date_order = "mdy"\n'),
    files: {
      "kilning.csv": "run,kiln,loaded_at,unloaded_at,bed_depth_in\nR1,K1,3/6/2026 8:00 AM,3/6/2026 8:30 PM,7\n",
    },
    table: "kilning",
    expected: { loaded_at: ["2026-03-06T14:00Z"], unloaded_at: ["2026-03-07T02:30Z"], bed_depth_m: [0.1778] },
  },
  {
    what: "noon and midnight on a twelve-hour clock",
    house: houseIn("UTC", 'date_order = "mdy"\n'),
    files: { "kilning.csv": kilningOf("R1,K1,3/6/2026 12:00 AM,3/6/2026 12:30 PM,17.5,\n") },
    table: "kilning",
    expected: { loaded_at: ["2026-03-06T00:00Z"], unloaded_at: ["2026-03-06T12:30Z"] },
  },
  {
    what: "dates that may be two days, no order declared",
    house: berlin,
    files: { "kilning.csv": kilningOf("R1,K1,06/03/2026 08:00,,17.5,\n") },
    table: "kilning",
    expected: { run: [] },
    problems: ["ambiguous-date"],
  },
  {
    what: "trailing empty columns and rows of a used range",
    house: berlin,
    files: { "kilning.csv": "run,kiln,loaded_at,,,\nR1,K1,2026-03-06 08:00,,,\n,,,,,\n,,,,,\n" },
    table: "kilning",
    expected: { run: ["R1"] },
  },
  {
    what: "ragged rows: one short, one long",
    house: berlin,
    files: { "kilning.csv": "run,kiln,loaded_at\nR1,K1\nR2,K1,2026-03-06 08:00,x\nR3,K1,2026-03-07 08:00\n" },
    table: "kilning",
    expected: { run: ["R3"] },
    problems: ["too-few-fields", "too-many-fields"],
  },
  {
    what: "an inch mark in a note that is not quoted",
    house: berlin,
    files: { "kilning.csv": kilningOf('R1,K1,2026-03-06 08:00,,17.5,a 6" bed\n') },
    table: "kilning",
    expected: { run: ["R1"], note: [null] },
    problems: ["stray-quote"],
  },
  {
    what: "a quotation mark that is never closed",
    house: berlin,
    files: {
      "kilning.csv": kilningOf(
        'R1,K1,2026-03-06 08:00,,17.5,\nR2,K1,2026-03-07 08:00,,17.5,"good\nR3,K1,2026-03-08 08:00,,17,\n',
      ),
    },
    table: "kilning",
    expected: { run: ["R1"] },
    problems: ["open-quote"],
  },
  {
    what: "a note of two lines, with commas and doubled quotation marks",
    house: berlin,
    files: {
      "kilning.csv": kilningOf('R1,K1,2026-03-06 08:00,,17.5,"slow, ""wet""\nair"\nR2,K1,2026-03-07 08:00,,17.5,\n'),
    },
    table: "kilning",
    expected: { run: ["R1", "R2"], note: ['slow, "wet"\nair', null] },
  },
  {
    what: "non-breaking spaces about values and a typeset minus",
    house: berlin,
    files: { "kilning.csv": "run,kiln,loaded_at,ambient_c\n\u00a0R1\u00a0,K1,2026-03-06\u00a008:00,\u22124.5\u202f\n" },
    table: "kilning",
    expected: { run: ["R1"], loaded_at: ["2026-03-06T07:00Z"], ambient_c: [-4.5] },
  },
  {
    what: "decimal points and decimal commas in one file",
    house: dmy,
    files: {
      "kilning.csv": "run;kiln;loaded_at;bed_depth_cm\nR1;K1;06.03.2026 08:00;17,5\nR2;K1;07.03.2026 08:00;17.5\n",
    },
    table: "kilning",
    expected: {},
    problems: ["decimal-mixed"],
  },
  {
    what: "spaces and apostrophes between thousands",
    house: berlin,
    files: {
      "steeping.csv": "run,lot,started_at,grain_in_kg\nR1,L1,2026-03-01 06:00,1 000\nR2,L1,2026-03-03 06:00,1'000\n",
    },
    table: "steeping",
    expected: { run: ["R1", "R2"], grain_in_kg: [null, null] },
    problems: ["thousands-mark", "thousands-mark"],
  },
  {
    what: "units beside the numbers and a spreadsheet's error mark",
    house: berlin,
    files: { "kilning.csv": "run,kiln,loaded_at,bed_depth_cm,ambient_c\nR1,K1,2026-03-06 08:00,17.5 cm,#N/A\n" },
    table: "kilning",
    expected: { bed_depth_m: [null], ambient_c: [null] },
    problems: ["unit-in-value", "spreadsheet-error"],
  },
  {
    what: "a spreadsheet's day numbers",
    house: berlin,
    files: { "lab.csv": "run,tested_on\nR1,46087\n" },
    table: "lab",
    expected: { run: [] },
    problems: ["spreadsheet-date"],
  },
  {
    what: "leading zeros, and a batch number cut short by a spreadsheet",
    house: berlin,
    files: { "moisture-samples.csv": "run,moisture_pct\n007,4.5\n2.60E+11,4.6\n" },
    table: "moisture-samples",
    expected: { run: ["007"], moisture_pct: [4.5] },
    problems: ["damaged-id"],
  },
  {
    what: "headings in capitals",
    house: berlin,
    files: { "moisture-samples.csv": "RUN,Moisture_Pct\nR1,4.5\n" },
    table: "moisture-samples",
    expected: { moisture_pct: [4.5] },
  },
  {
    what: "old line breaks, CR alone",
    house: berlin,
    files: { "moisture-samples.csv": "run,moisture_pct\rR1,4.5\rR2,4.6\r" },
    table: "moisture-samples",
    expected: { moisture_pct: [4.5, 4.6] },
  },
  {
    what: "a workbook under the name of a CSV file",
    house: berlin,
    files: { "kilning.csv": Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0, 6, 0) },
    table: "kilning",
    expected: {},
    problems: ["not-text"],
  },
  {
    what: "pounds and degrees Fahrenheit",
    house: berlin,
    files: { "germination.csv": "run,started_at,bed_grain_lb,bed_mean_f,room_f\nR1,2026-03-02 06:00,1000,62.6,-4\n" },
    table: "germination",
    expected: { bed_grain_kg: [453.59237], bed_mean_c: [17], room_c: [-20] },
  },
];
