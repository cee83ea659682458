import type { UnitSystem } from "../../units/unitSystem.ts";
import type { LogFile } from "../logFile.ts";
import { textFile } from "./textFile.ts";

/** What a page knows of a batch whose files it does not have. Milliseconds since 1970, kilograms, per cent. */
export interface KnownBatch {
  readonly run: string;
  readonly lot: string | null;
  readonly grainInKilograms: number | null;
  readonly grainMoisturePercent: number | null;
  readonly steepStartedAt: number | null;
  readonly steepEndedAt: number | null;
  readonly germinationStartedAt: number | null;
  readonly germinationEndedAt: number | null;
  readonly kiln: string | null;
  readonly loadedAt: number | null;
  readonly unloadedAt: number | null;
  readonly maltOutKilograms: number | null;
}

type Cell = string | number | null;

const moment = (at: number | null): string =>
  at === null ? "" : new Date(at).toISOString().slice(0, 19).replace("T", " ");
const csv = (headings: readonly string[], cells: readonly Cell[]): string =>
  `${headings.join(",")}\n${cells.map((cell) => `"${String(cell ?? "").replaceAll('"', '""')}"`).join(",")}\n`;

interface KnownHouse {
  readonly name: string;
  readonly timeZone: string;
  readonly units: UnitSystem;
}

/** A house.toml that says what a page knows of a house. */
export const settingsText = ({ name, timeZone, units }: KnownHouse): string =>
  `name = ${JSON.stringify(name)}\ntime_zone = ${JSON.stringify(timeZone)}\nunits = "${units}"\n`;

/**
 * The settings of a house, and the stages of one batch that are logged already, as logs for `checkDraft` where the house's
 * files are not at hand.
 *
 * @param batch null for a batch that is not logged yet
 */
export function logsAtHand(house: KnownHouse, batch: KnownBatch | null): readonly LogFile[] {
  const files = [textFile("house.toml", settingsText(house))];
  if (batch === null) return files;
  if (batch.steepStartedAt !== null) {
    const headings = ["run", "lot", "started_at_utc", "ended_at_utc", "grain_in_kg", "grain_moisture_pct"];
    const cells = [batch.run, batch.lot, moment(batch.steepStartedAt), moment(batch.steepEndedAt)];
    files.push(textFile("steeping.csv", csv(headings, [...cells, batch.grainInKilograms, batch.grainMoisturePercent])));
  }
  if (batch.germinationStartedAt !== null) {
    const cells = [batch.run, moment(batch.germinationStartedAt), moment(batch.germinationEndedAt)];
    files.push(textFile("germination.csv", csv(["run", "started_at_utc", "ended_at_utc"], cells)));
  }
  if (batch.loadedAt !== null) {
    const cells = [batch.run, batch.kiln, moment(batch.loadedAt), moment(batch.unloadedAt), batch.maltOutKilograms];
    files.push(textFile("kilning.csv", csv(["run", "kiln", "loaded_at_utc", "unloaded_at_utc", "malt_out_kg"], cells)));
  }
  return files;
}
