import { bedDepthFamily, massFamily, temperatureFamily } from "../units/suffix.ts";
import type { Column, TableDeclaration } from "./declarations.ts";

const PERCENT_OF_MASS = "% of mass";
const run: Column = { stem: "run", kind: "id", needed: true, meaning: "the batch, one name from steep to malt" };
const mass = (stem: string, meaning: string): Column => ({
  stem,
  kind: "number",
  family: massFamily,
  range: [0, 200_000],
  meaning,
});
const humidity = (stem: string, meaning: string): Column => ({
  stem,
  kind: "number",
  range: [0, 100],
  unit: "% relative humidity",
  meaning,
});
const temperature = (stem: string, low: number, high: number, meaning: string): Column => ({
  stem,
  kind: "number",
  family: temperatureFamily,
  range: [low, high],
  meaning,
});

export const kilning: TableDeclaration = {
  name: "kilning",
  place: "kilning.csv",
  meaning:
    "One row for each run in each kiln load: rows that share `load` (else kiln and loaded_at) were dried together; a run split over loads has several rows. Hours belong to the load, masses to the row.",
  columns: [
    run,
    { stem: "kiln", kind: "id", needed: true, meaning: "which kiln, as in house.toml" },
    { stem: "load", kind: "id", meaning: "the house's name for the load" },
    { stem: "loaded_at", kind: "instant", needed: true, meaning: "kiln loaded, fan on" },
    { stem: "cure_started_at", kind: "instant", meaning: "heat turned up from drying to curing" },
    { stem: "heat_off_at", kind: "instant", meaning: "heat off" },
    { stem: "unloaded_at", kind: "instant", meaning: "kiln emptied; blank while under way" },
    {
      stem: "bed_depth",
      kind: "number",
      family: bedDepthFamily,
      range: [0.01, 2],
      meaning: "depth of the green malt, levelled",
    },
    mass("green_load", "green malt of this run in this load"),
    humidity("ambient_rh_pct", "air at the kiln's intake"),
    temperature("ambient", -50, 55, "air at the kiln's intake"),
    {
      stem: "ambient_basis",
      kind: "choice",
      choices: ["at_loading", "mean"],
      meaning: "whether the two ambient values were taken at loading or averaged over the run",
    },
    humidity("outside_rh_pct", "air outdoors, where the intake draws from a room"),
    temperature("outside", -50, 55, "air outdoors"),
    temperature("drying_set", 10, 120, "set point while drying"),
    temperature("cure_set", 20, 250, "set point while curing"),
    temperature("fan_set", -20, 120, "set point of a fan that has a thermostat of its own"),
    {
      stem: "final_moisture_pct",
      kind: "number",
      range: [0, 40],
      unit: PERCENT_OF_MASS,
      meaning: "moisture of the finished malt",
    },
    mass("malt_out", "malt as unloaded"),
    mass("cleaned_out", "malt after rootlets and dust are off"),
    mass("rootlets", "rootlets taken off"),
    { stem: "energy_kwh", kind: "number", range: [0, 100_000], unit: "kWh", meaning: "energy used by the load" },
    { stem: "bag_code", kind: "id", meaning: "what stands on the bags" },
    { stem: "note", kind: "text", meaning: "anything else; kept in the house" },
  ],
};

export const moistureSamples: TableDeclaration = {
  name: "moisture-samples",
  place: "moisture-samples.csv",
  meaning: "Moisture of finished malt, one row a sample; several a run show how even the bed dried.",
  columns: [
    run,
    { stem: "place", kind: "text", meaning: "where in the kiln or bag the sample was taken" },
    {
      stem: "moisture_pct",
      kind: "number",
      needed: true,
      range: [0, 40],
      unit: PERCENT_OF_MASS,
      meaning: "moisture of the sample",
    },
  ],
};
