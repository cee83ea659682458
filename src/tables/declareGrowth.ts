import { massFamily, temperatureFamily } from "../units/suffix.ts";
import type { Column, TableDeclaration } from "./declarations.ts";

const PERCENT_OF_MASS = "% of mass";
const run: Column = { stem: "run", kind: "id", needed: true, meaning: "the batch, one name from steep to malt" };

const kernels = (stem: string, meaning: string): Column => ({
  stem,
  kind: "count",
  range: [0, 5000],
  unit: "kernels",
  meaning,
});

/** Kernels counted by how far the acrospire has grown, in classes of kernel length; all six or none. */
export const acrospireColumns: readonly Column[] = [
  kernels("acrospire_none", "kernels without growth"),
  kernels("acrospire_to_quarter", "acrospire up to a quarter of the kernel"),
  kernels("acrospire_to_half", "from a quarter to a half"),
  kernels("acrospire_to_three_quarters", "from a half to three quarters"),
  kernels("acrospire_to_full", "from three quarters to the whole length"),
  kernels("acrospire_over", "overgrown: past the kernel's end"),
];

export const steeping: TableDeclaration = {
  name: "steeping",
  place: "steeping.csv",
  meaning: "One row a tank: a batch that fills several tanks has several rows with its run.",
  columns: [
    run,
    { stem: "lot", kind: "id", needed: true, meaning: "the grain lot, as in grain-lots.csv" },
    { stem: "tank", kind: "id", meaning: "which tank" },
    { stem: "grain_in", kind: "number", family: massFamily, range: [0.1, 100_000], meaning: "grain into the tank" },
    {
      stem: "grain_moisture_pct",
      kind: "number",
      range: [3, 30],
      unit: PERCENT_OF_MASS,
      meaning: "moisture of the grain going in; the lot's where blank",
    },
    { stem: "started_at", kind: "instant", needed: true, meaning: "first water on" },
    { stem: "ended_at", kind: "instant", meaning: "out of the steep; blank while under way" },
    { stem: "water", kind: "number", family: temperatureFamily, range: [0, 40], meaning: "steep water" },
    { stem: "wet_hours", kind: "number", range: [0, 200], unit: "h", meaning: "hours under water, all together" },
    { stem: "air_rest_hours", kind: "number", range: [0, 200], unit: "h", meaning: "hours drained, all together" },
    {
      stem: "steep_out",
      kind: "number",
      family: massFamily,
      range: [0.1, 200_000],
      meaning: "mass of drained grain at steep-out",
    },
    {
      stem: "steep_out_moisture_pct",
      kind: "number",
      range: [15, 70],
      unit: PERCENT_OF_MASS,
      meaning: "measured moisture at steep-out; worked out from the gain in mass where blank",
    },
    {
      stem: "chitted_pct",
      kind: "number",
      range: [0, 100],
      unit: "% of kernels",
      meaning: "kernels that show the root sheath",
    },
    { stem: "note", kind: "text", meaning: "anything else; kept in the house" },
  ],
};

export const germination: TableDeclaration = {
  name: "germination",
  place: "germination.csv",
  meaning: "One row a bed: a batch over several beds has several rows with its run.",
  columns: [
    run,
    { stem: "bed", kind: "id", meaning: "which bed" },
    { stem: "started_at", kind: "instant", needed: true, meaning: "into the bed" },
    { stem: "ended_at", kind: "instant", meaning: "out of the bed; blank while under way" },
    {
      stem: "bed_grain",
      kind: "number",
      family: massFamily,
      range: [0.1, 200_000],
      meaning: "grain in this bed; weighs the beds of one run against each other",
    },
    { stem: "room", kind: "number", family: temperatureFamily, range: [-30, 50], meaning: "air of the room" },
    { stem: "bed_mean", kind: "number", family: temperatureFamily, range: [0, 60], meaning: "mean over the stage" },
    { stem: "bed_max", kind: "number", family: temperatureFamily, range: [0, 70], meaning: "warmest seen" },
    { stem: "turns", kind: "count", range: [0, 500], unit: "turns", meaning: "how often the bed was turned" },
    ...acrospireColumns.map((column) => ({ ...column, meaning: `${column.meaning}, at unloading` })),
    {
      stem: "green_moisture_pct",
      kind: "number",
      range: [15, 70],
      unit: PERCENT_OF_MASS,
      meaning: "moisture of the green malt",
    },
    { stem: "note", kind: "text", meaning: "anything else; kept in the house" },
  ],
};

export const acrospireCounts: TableDeclaration = {
  name: "acrospire-counts",
  place: "acrospire-counts.csv",
  meaning: "Counts made on the way, any number a run.",
  columns: [
    run,
    { stem: "bed", kind: "id", meaning: "which bed" },
    { stem: "counted_at", kind: "instant", needed: true, meaning: "when the sample was taken" },
    ...acrospireColumns,
  ],
};
