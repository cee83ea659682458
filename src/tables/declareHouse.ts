import type { TableDeclaration } from "./declarations.ts";

export const events: TableDeclaration = {
  name: "events",
  place: "events.csv",
  meaning: "What was changed, mended, calibrated or went wrong, and where new baselines begin.",
  columns: [
    { stem: "on", kind: "date", needed: true, meaning: "day from which it holds" },
    {
      stem: "kind",
      kind: "choice",
      needed: true,
      choices: ["change", "repair", "calibration", "incident", "new-baseline"],
      meaning: "what kind of event",
    },
    {
      stem: "scope",
      kind: "choice",
      needed: true,
      choices: [
        "grain",
        "steep",
        "germination",
        "kiln",
        "thermostat",
        "logger",
        "scale",
        "cleaning",
        "laboratory",
        "other",
      ],
      meaning: "what it touches",
    },
    { stem: "what", kind: "text", needed: true, meaning: "in a few words" },
    {
      stem: "alters",
      kind: "text",
      meaning: "the log column that the change sets, where there is one, as in `bed_depth`",
    },
  ],
};

/** Measures that targets.csv may name besides any column of lab.csv. */
export const houseMeasures: readonly string[] = [
  "dry_yield_pct",
  "final_moisture_pct",
  "kiln_hours_over_expected",
  "steep_out_moisture_pct",
  "acrospire_mean",
  "acrospire_overgrown_pct",
];

export const targets: TableDeclaration = {
  name: "targets",
  place: "targets.csv",
  meaning: "What the house and its buyers ask for; the nearest row wins.",
  columns: [
    { stem: "variety", kind: "id", needed: true, meaning: "a variety, a grain, or `any`" },
    {
      stem: "measure",
      kind: "id",
      needed: true,
      meaning: `${houseMeasures.join(", ")}, or a column of lab.csv`,
    },
    { stem: "low", kind: "number", unit: "as the measure", meaning: "lowest that is accepted" },
    { stem: "target", kind: "number", unit: "as the measure", meaning: "what is aimed at" },
    { stem: "high", kind: "number", unit: "as the measure", meaning: "highest that is accepted" },
  ],
};
