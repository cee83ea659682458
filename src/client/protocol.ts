import type { ChosenRows } from "../report/chosenRows.ts";
import type { PackedReport } from "../report/packed.ts";
import type { PublishedLogs } from "../report/publishedLogs.ts";
import type { PartName, ReportRows } from "../report/report.ts";
import type { View } from "../report/view.ts";
import type { AskReply, AskRequest } from "./askLogs/askProtocol.ts";
import type { LaterFindings } from "./laterFindings.ts";
import type { ChosenFile } from "./ownLogs/chosenFile.ts";
import type { ReadingProgress } from "./ownLogs/readingProgress.ts";

/** Which logs a worker opens, once. `engine` is the absolute address of the engine's folder. */
export type OpenRequest =
  /** `tables` is the absolute address of the tables' folder, `published` the name of the list inside it. */
  | { readonly kind: "open"; readonly tables: string; readonly published: string; readonly engine: string }
  /** The reader's own; `house` is the text of a house.toml for logs that bring none. */
  | {
      readonly kind: "open-own";
      readonly files: readonly ChosenFile[];
      readonly house: string;
      readonly engine: string;
    };

/** What the page asks of the report worker. */
export type WorkerRequest =
  | OpenRequest
  | AskRequest
  /** The rows of a view, and of what is worked out of them only what the page shows. A later request ends an earlier one. */
  | { readonly kind: "report"; readonly request: number; readonly view: View; readonly parts: readonly PartName[] }
  /** Nobody waits, and these views are likely to be asked for: each is answered in turn until anything else is asked. */
  | {
      readonly kind: "foresee";
      readonly request: number;
      readonly views: readonly View[];
      readonly parts: readonly PartName[];
    }
  /** A request's report has been drawn and shown: what is worked out behind it no longer keeps a core from the drawing. */
  | { readonly kind: "seen"; readonly request: number }
  /** What is known of the logs besides their rows. */
  | { readonly kind: "published" }
  /** The readings of one load of the reader's own logs, by the name in its row. */
  | { readonly kind: "readings"; readonly file: string };

/** What the worker answers. */
export type WorkerAnswer =
  | AskReply
  | {
      readonly kind: "progress";
      readonly part: "engine" | "tables";
      readonly received: number;
      readonly total: number;
    }
  | ({ readonly kind: "progress"; readonly part: "reading" } & ReadingProgress)
  /** `rows`: all of the reader's own logs; null for the site's, whose rows the page has. */
  | { readonly kind: "ready"; readonly rows: ReportRows | null }
  | { readonly kind: "published"; readonly published: PublishedLogs }
  /** `csv` is null where there is no such file. */
  | { readonly kind: "readings"; readonly file: string; readonly csv: Blob | null }
  /** `parts` holds those asked for, by name; where something of them takes longer, it follows. */
  | { readonly kind: "report"; readonly request: number; readonly chosen: ChosenRows; readonly parts: PackedReport }
  /** As `report`, of a view that nobody has asked for yet. */
  | {
      readonly kind: "foreseen";
      readonly request: number;
      readonly view: View;
      readonly chosen: ChosenRows;
      readonly parts: PackedReport;
    }
  | { readonly kind: "later"; readonly request: number; readonly later: LaterFindings }
  | { readonly kind: "failed"; readonly request: number | null; readonly message: string };
