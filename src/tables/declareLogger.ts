import { temperatureFamily } from "../units/suffix.ts";
import type { TableDeclaration } from "./declarations.ts";

export const readings: TableDeclaration = {
  name: "readings",
  place: "readings/",
  meaning:
    "The kiln logger's files: any number, any span, overlapping or not. A reading belongs to the load whose kiln it names and in whose hours it falls.",
  columns: [
    { stem: "kiln", kind: "id", needed: true, meaning: "which kiln" },
    { stem: "at", kind: "instant", needed: true, meaning: "when" },
    {
      stem: "air_on",
      kind: "number",
      needed: true,
      family: temperatureFamily,
      range: [-50, 250],
      meaning: "air going into the bed",
    },
    { stem: "air_off", kind: "number", family: temperatureFamily, range: [-50, 250], meaning: "air leaving the bed" },
    { stem: "bed", kind: "number", family: temperatureFamily, range: [-50, 250], meaning: "inside the bed" },
    {
      stem: "air_off_rh_pct",
      kind: "number",
      range: [0, 100],
      unit: "% relative humidity",
      meaning: "air leaving the bed",
    },
    { stem: "heater_on", kind: "flag", unit: "0 or 1", meaning: "heater on at this moment" },
    { stem: "fan_on", kind: "flag", unit: "0 or 1", meaning: "fan on at this moment" },
  ],
};

export const weather: TableDeclaration = {
  name: "weather",
  place: "weather/",
  meaning: "Air at the kiln's intake from a logger or station, any number of files.",
  columns: [
    { stem: "at", kind: "instant", needed: true, meaning: "when" },
    {
      stem: "ambient_rh_pct",
      kind: "number",
      needed: true,
      range: [0, 100],
      unit: "% relative humidity",
      meaning: "relative humidity",
    },
    { stem: "ambient", kind: "number", family: temperatureFamily, range: [-60, 60], meaning: "temperature" },
  ],
};

export const loggerChecks: TableDeclaration = {
  name: "logger-checks",
  place: "logger-checks.csv",
  meaning: "The logger's probes held against a reference: an ice point, a boiling point, a better thermometer.",
  columns: [
    { stem: "kiln", kind: "id", needed: true, meaning: "which kiln's logger" },
    { stem: "at", kind: "instant", needed: true, meaning: "when" },
    {
      stem: "probe",
      kind: "choice",
      needed: true,
      choices: ["air_on", "air_off", "bed"],
      meaning: "which probe",
    },
    {
      stem: "reference",
      kind: "number",
      needed: true,
      family: temperatureFamily,
      range: [-50, 250],
      meaning: "what the reference says",
    },
    {
      stem: "reading",
      kind: "number",
      needed: true,
      family: temperatureFamily,
      range: [-50, 250],
      meaning: "what the logger says",
    },
    { stem: "note", kind: "text", meaning: "anything else; kept in the house" },
  ],
};
