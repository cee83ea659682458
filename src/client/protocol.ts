import type { ChosenRows } from "../report/chosenRows.ts";
import type { PackedReport } from "../report/packed.ts";
import type { PartName } from "../report/report.ts";
import type { View } from "../report/view.ts";
import type { LaterFindings } from "./laterFindings.ts";

/** What the page asks of the report worker. */
export type WorkerRequest =
  /** `tables` is the absolute address of the tables' folder, `published` the name of the list inside it. */
  | { readonly kind: "open"; readonly tables: string; readonly published: string; readonly engine: string }
  /** The rows of a view, and of what is worked out of them only what the page shows. A later request ends an earlier one. */
  | { readonly kind: "report"; readonly request: number; readonly view: View; readonly parts: readonly PartName[] };

/** What the worker answers. */
export type WorkerAnswer =
  | { readonly kind: "progress"; readonly part: "engine" | "tables"; readonly received: number; readonly total: number }
  | { readonly kind: "ready" }
  /** `parts` holds those asked for, by name; where something of them takes longer, it follows. */
  | { readonly kind: "report"; readonly request: number; readonly chosen: ChosenRows; readonly parts: PackedReport }
  | { readonly kind: "later"; readonly request: number; readonly later: LaterFindings }
  | { readonly kind: "failed"; readonly request: number | null; readonly message: string };
