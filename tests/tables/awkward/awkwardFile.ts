import type { ForeignMatch } from "../../../src/tables/foreign/foreignMatch.ts";
import type { FileTexts } from "../logsOf.ts";

/** A file as somebody's spreadsheet or logger writes it, and what must come out of it. Made up, every one. */
export interface AwkwardFile {
  readonly what: string;
  readonly house?: string;
  readonly files: FileTexts;
  readonly table: ForeignMatch["table"];
  /** By the name kept inside, in SI; instants as ISO text in UTC. */
  readonly expected: Readonly<Record<string, readonly (string | number | null)[]>>;
  /** Rules of every problem, in order; none where left out. */
  readonly problems?: readonly string[];
}

/** A house of one kiln in a time zone. */
export const houseIn = (zone: string, more = ""): string => `time_zone = "${zone}"\n${more}[[kilns]]\nid = "K1"\n`;

/** A kilning log of these rows. */
export const kilningOf = (rows: string): string => `run,kiln,loaded_at,unloaded_at,bed_depth_cm,note\n${rows}`;
