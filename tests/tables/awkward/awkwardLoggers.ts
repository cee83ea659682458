import { type AwkwardFile, houseIn } from "./awkwardFile.ts";

const berlin = houseIn("Europe/Berlin");

/** Loggers that overlap, contradict or complete each other. */
export const awkwardLoggers: readonly AwkwardFile[] = [
  {
    what: "two files of one logger that overlap and agree",
    house: berlin,
    files: {
      "readings/a.csv": "kiln,at_utc,air_on_c\nK1,2026-03-06 08:00,50\nK1,2026-03-06 08:01,51\n",
      "readings/b.csv": "kiln,at_utc,air_on_c\nK1,2026-03-06 08:01,51\nK1,2026-03-06 08:02,52\n",
    },
    table: "readings",
    expected: { air_on_c: [50, 51, 52] },
    problems: ["readings-repeated"],
  },
  {
    what: "two loggers in one kiln that contradict each other",
    house: berlin,
    files: {
      "readings/a.csv": "kiln,at_utc,air_on_c\nK1,2026-03-06 08:00,50\n",
      "readings/b.csv": "kiln,at_utc,air_on_c\nK1,2026-03-06 08:00,58\nK1,2026-03-06 08:02,52\n",
    },
    table: "readings",
    expected: { air_on_c: [50, 52] },
    problems: ["readings-contradict"],
  },
  {
    what: "two loggers that fill each other's blanks, one in °F",
    house: berlin,
    files: {
      "readings/a.csv": "kiln,at_utc,air_on_c\nK1,2026-03-06 08:00,50\n",
      "readings/b.csv": "kiln,at_utc,air_on_c,air_off_f\nK1,2026-03-06 08:00,50,95\n",
    },
    table: "readings",
    expected: { air_on_c: [50], air_off_c: [35] },
    problems: ["readings-repeated"],
  },
  {
    what: "readings out of order, two kilns interleaved",
    house: `${berlin}[[kilns]]\nid = "K2"\n`,
    files: {
      "readings/a.csv":
        "kiln,at_utc,air_on_c\nK2,2026-03-06 08:01,61\nK1,2026-03-06 08:01,51\nK2,2026-03-06 08:00,60\nK1,2026-03-06 08:00,50\n",
    },
    table: "readings",
    expected: { kiln: ["K1", "K1", "K2", "K2"], air_on_c: [50, 51, 60, 61] },
  },
];
