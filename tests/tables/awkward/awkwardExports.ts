import { type AwkwardFile, houseIn } from "./awkwardFile.ts";

const berlin = houseIn("Europe/Berlin");
const row = { run: ["R1"], kiln: ["K1"], loaded_at: ["2026-03-06T07:00Z"] };
const utf16 = (text: string): Uint8Array => new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));

/** What else comes along when people and programs write tables: marks, blanks, sums, clocks. */
export const awkwardExports: readonly AwkwardFile[] = [
  {
    what: "a byte order mark before quoted headings and values",
    house: berlin,
    files: { "kilning.csv": '\ufeff"run","kiln","loaded_at"\r\n"R1","K1","2026-03-06 08:00"\r\n' },
    table: "kilning",
    expected: row,
  },
  {
    what: "blank lines before the headings, and spaces about them",
    house: berlin,
    files: { "kilning.csv": "\n\n,,\n run , kiln ,loaded_at \nR1,K1,2026-03-06 08:00\n" },
    table: "kilning",
    expected: row,
  },
  {
    what: "UTF-16 that names its delimiter and holds a sign of two units",
    house: berlin,
    files: { "kilning.csv": utf16("sep=;\r\nrun;kiln;loaded_at;note\r\nR1;K1;2026-03-06 08:00;🌾 grün\r\n") },
    table: "kilning",
    expected: { ...row, note: ["🌾 grün"] },
  },
  {
    what: "a Swedish export: ISO dates, semicolons and decimal commas",
    house: houseIn("Europe/Stockholm"),
    files: { "kilning.csv": "run;kiln;loaded_at;bed_depth_cm\nR1;K1;2026-03-06 08:00;17,5\n" },
    table: "kilning",
    expected: { ...row, bed_depth_m: [0.175] },
  },
  {
    what: "a French export: narrow spaces between thousands",
    house: houseIn("Europe/Paris", 'date_order = "dmy"\n'),
    files: {
      "steeping.csv":
        "run;lot;started_at;grain_in_kg\nR1;L1;01/03/2026 06:00;1\u202f234,5\nR2;L1;02/03/2026 6:00;234,5\n",
    },
    table: "steeping",
    expected: { run: ["R1", "R2"], grain_in_kg: [null, 234.5] },
    problems: ["thousands-mark"],
  },
  {
    what: "a US export: commas between thousands, in quotation marks",
    house: houseIn("America/Chicago", 'date_order = "mdy"\n'),
    files: {
      "steeping.csv":
        'run,lot,started_at,grain_in_lb\nR1,L1,3/1/2026 6:00 AM,"1,234.5"\nR2,L1,3/2/2026 6:00 AM,1234.5\n',
    },
    table: "steeping",
    // The pound is 0.45359237 kg by definition.
    expected: { run: ["R1", "R2"], grain_in_kg: [null, 1234.5 * 0.45359237] },
    problems: ["thousands-mark"],
  },
  {
    what: "a US clock with a narrow space, and with full stops",
    house: houseIn("America/Chicago", 'date_order = "mdy"\n'),
    files: { "kilning.csv": "run,kiln,loaded_at\nR1,K1,3/6/2026 8:00\u202fPM\nR2,K1,3/6/2026 8:00 a.m.\n" },
    table: "kilning",
    expected: { loaded_at: ["2026-03-07T02:00Z", "2026-03-06T14:00Z"] },
  },
  {
    what: "years of two digits, a day that no calendar has and an hour that no clock shows",
    house: houseIn("UTC", 'date_order = "mdy"\n'),
    files: { "kilning.csv": "run,kiln,loaded_at\nR1,K1,3/6/26 8:00\nR2,K1,2026-02-30 08:00\nR3,K1,2026-03-06 24:00\n" },
    table: "kilning",
    expected: { run: [] },
    problems: ["year-cut-short", "no-such-date", "not-a-time"],
  },
  {
    what: "a line of sums below the rows",
    house: berlin,
    files: {
      "steeping.csv": "run,lot,started_at,grain_in_kg\nR1,L1,2026-03-01 06:00,300\nTotal,,,300\n",
    },
    table: "steeping",
    expected: { run: ["R1"], grain_in_kg: [300] },
    problems: ["needed-value-missing", "needed-value-missing"],
  },
  {
    what: "two columns of one name",
    house: berlin,
    files: { "steeping.csv": "run,lot,started_at,grain_in_kg,grain_in_kg\nR1,L1,2026-03-01 06:00,300,301\n" },
    table: "steeping",
    expected: { run: ["R1"] },
    problems: ["duplicate-heading"],
  },
  {
    what: "line ends of three kinds in one file, the last line without any",
    house: berlin,
    files: { "moisture-samples.csv": "run,moisture_pct\r\nR1,4.5\nR2,4.6\rR3,4.7" },
    table: "moisture-samples",
    expected: { run: ["R1", "R2", "R3"], moisture_pct: [4.5, 4.6, 4.7] },
  },
  {
    what: "signs and marks for what was not measured",
    house: berlin,
    files: { "moisture-samples.csv": "run,moisture_pct\nR1,+4.5\nR2,n/a\nR3,-\nR4,<0.5\nR5,.5\nR6,1e400\n" },
    table: "moisture-samples",
    expected: { run: ["R1", "R5"], moisture_pct: [4.5, 0.5] },
    problems: ["not-a-number", "not-a-number", "not-a-number", "not-a-number"],
  },
  {
    what: "names that a program could stumble over",
    house: berlin,
    files: { "moisture-samples.csv": "run,place,moisture_pct,__proto__\n__proto__,toString,4.5,1\n" },
    table: "moisture-samples",
    expected: { run: ["__proto__"], place: ["toString"], moisture_pct: [4.5] },
    problems: ["unknown-column"],
  },
  {
    what: "a logger that writes the newest line first, through the doubled hour",
    house: berlin,
    files: {
      "readings/a.csv":
        "kiln,at,air_on_c\nK1,2026-10-25 03:30,53\nK1,2026-10-25 02:30,52\nK1,2026-10-25 02:30,51\nK1,2026-10-25 01:30,50\n",
    },
    table: "readings",
    expected: {
      at: ["2026-10-24T23:30Z", "2026-10-25T00:30Z", "2026-10-25T01:30Z", "2026-10-25T02:30Z"],
      air_on_c: [50, 51, 52, 53],
    },
  },
  {
    what: "two loggers that overlap half a minute apart, one with decimals of seconds and commas",
    house: `${berlin}[files."readings/b.csv"]\ndecimal = ","\n`,
    files: {
      "readings/a.csv": "kiln,at,air_on_c\nK1,2026-03-06 08:00,50\nK1,2026-03-06 08:01,51\n",
      "readings/b.csv": "kiln;at;air_on_c\nK1;2026-03-06 08:00:30,000;50,5\nK1;2026-03-06 08:01:30,000;51,5\n",
    },
    table: "readings",
    expected: { air_on_c: [50, 50.5, 51, 51.5] },
  },
  {
    what: "text made safe from a spreadsheet by a formula",
    house: berlin,
    files: { "moisture-samples.csv": 'run,moisture_pct\n"=""007""",4.5\n' },
    table: "moisture-samples",
    expected: { run: ["007"], moisture_pct: [4.5] },
  },
];
