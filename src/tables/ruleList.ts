/** What each rule looks for and what becomes of what it finds; data/README.md is written from this list. */
export interface RuleMeaning {
  readonly rule: string;
  readonly effect: string;
  readonly meaning: string;
}

const FILE = "file set aside";
const VALUE = "row set aside where the column is needed, else value blanked";
const ROW = "row set aside";
const BLANKED = "value blanked";
const NOTE = "note";

const rules = (effect: string, meanings: Readonly<Record<string, string>>): readonly RuleMeaning[] =>
  Object.entries(meanings).map(([rule, meaning]) => ({ rule, effect, meaning }));

export const ruleList: readonly RuleMeaning[] = [
  ...rules(FILE, {
    "house-unreadable": "house.toml is not TOML; every setting has its default",
    "match-unreadable": "columns.toml is not TOML; no foreign file is read by it",
    "file-unreadable": "the file could not be read from where it lies",
    "not-text": "a workbook or archive instead of a CSV file",
    "wrong-encoding": "bytes that are not text in the encoding declared, marked or assumed (UTF-8)",
    "delimiter-unclear": "the first line holds more than one kind of delimiter, and none is declared",
    "decimal-mixed": "numbers with a decimal point and with a decimal comma in one file",
    "decimal-unclear": "every marked number may be thousands or decimals, and nothing is declared",
    "needed-column-missing": "no column of that name, and no row can be read without it",
  }),
  ...rules(`${FILE} where the column is needed, else its values blanked`, {
    "duplicate-heading": "one column twice, be it in two units",
  }),
  ...rules(ROW, {
    "open-quote": "a quotation mark that is never closed: it and all that follows",
    "too-few-fields": "fewer fields than headings; a line cut short",
    "too-many-fields": "more fields than headings, and not blank",
    "needed-value-missing": "a needed column is blank",
    "readings-contradict": "one kiln and time with two values; the first read stays",
    "repeated-row": "a row of a run log word for word again; the first stays",
    "duplicate-lot": "a lot on two rows with different values; the first stays",
    "duplicate-customer": "a customer on two rows with different values; the first stays",
    "duplicate-target": "a variety and measure on two rows with different values; the first stays",
    "duplicate-run": "one run name on rows of a stage that begin more than 14 days apart; the earliest stays",
  }),
  ...rules(VALUE, {
    "stray-quote": "a quotation mark inside a value that is not quoted",
    "not-a-number": "text where a number belongs",
    "thousands-mark": "a mark between thousands",
    "decimal-mark": "the decimal mark that this file does not use",
    "unit-in-value": "a unit beside the number",
    "spreadsheet-error": "a spreadsheet's error mark",
    "not-whole": "a count that is not a whole number",
    "out-of-range": "beyond the range below; moistures outside 0 to 100 % among them",
    "not-a-flag": "neither 0 nor 1",
    "not-a-choice": "not one of the words listed",
    "damaged-id": "a long number that a spreadsheet cut to 1.23E+10",
    "not-a-date": "not ISO and not in the declared order",
    "no-such-date": "a day that the calendar does not have",
    "ambiguous-date": "day and month cannot be told apart without a declared order",
    "year-cut-short": "a year of two digits",
    "spreadsheet-date": "a spreadsheet's day number",
    "absurd-date": "outside the years 1990 to 2099",
    "time-missing": "a date without a time of day",
    "not-a-time": "a time of day that cannot be read",
    "missing-hour": "a local time that the clock change left out",
    "doubled-hour": "a local time that came twice, and its neighbours do not settle which",
  }),
  ...rules(BLANKED, {
    "setting-type": "a setting of house.toml or columns.toml of the wrong type; its default stands",
    "setting-refused": "a setting of house.toml or columns.toml that cannot be used; its default stands",
    "end-before-start": "a stage's moments out of order; those the row can do without are blanked",
    "malt-over-grain": "a run gave more malt than grain went in",
    "yield-over-100": "a dry-matter yield over 100 %",
    "acrospire-incomplete": "some acrospire classes blank while others are filled",
    "acrospire-all-zero": "every acrospire class is 0",
    "target-low-over-high": "a target's low lies above its high",
    "target-outside-limits": "a target outside its own limits",
  }),
  ...rules(NOTE, {
    "house-missing": "there is no house.toml",
    "unknown-setting": "a key that house.toml or columns.toml does not have",
    "match-file-missing": "columns.toml names files that are not there",
    "match-heading-missing": "columns.toml names a heading that the file does not have; the column is not read",
    "match-heading-twice": "columns.toml names a heading that stands twice in the file; the column is not read",
    "unknown-probe": "a probe that columns.toml does not name; its rows are not read",
    "declared-file-missing": "house.toml declares a file that is not there",
    "unknown-file": "a file that the format does not know",
    "empty-file": "a file without a heading line",
    "unknown-column": "a heading that the format does not know; kept for the run's page",
    "readings-repeated": "readings that stand in several files, kept once",
    "unknown-lot": "a steep of a lot that grain-lots.csv does not name",
    "unknown-run": "a run that no earlier stage names",
    "unknown-customer": "a customer who is not in customers.csv",
    "unknown-kiln": "a kiln that house.toml does not list",
    "unknown-measure": "a target for a measure that nobody knows",
    "run-twice": "a run twice in one vessel at the same moment; masses add up",
    "stages-overlap": "a stage that begins more than an hour before anything left the one before",
    "stages-apart": "more than 48 h between two stages",
    "stage-too-long": "a steep over 6 days, a germination over 14, a kilning over 4",
    "delivered-over-made": "more of a run delivered than it made, 1 % for scales allowed",
    "shipped-before-made": "shipped before it was out of the kiln",
    "readings-stand-still": "a probe that does not move for 2 h of a kiln load",
    "readings-jump": "a probe that moves over 20 °C within 5 minutes",
    "readings-gap": "the logger is silent for over 20 minutes of a load, or five of its usual steps if longer",
    "date-ahead": "a date still to come (checked where the program has a clock)",
  }),
];
