import type { Report } from "../report/report.ts";
import type { View } from "../report/view.ts";

/** What the page asks of the report worker. */
export type WorkerRequest =
  /** `tables` is the absolute address of the tables' folder, `published` the name of the list inside it. */
  | { readonly kind: "open"; readonly tables: string; readonly published: string; readonly engine: string }
  | { readonly kind: "report"; readonly request: number; readonly view: View };

/** What the worker answers. */
export type WorkerAnswer =
  | { readonly kind: "progress"; readonly part: "engine" | "tables"; readonly received: number; readonly total: number }
  | { readonly kind: "ready" }
  | { readonly kind: "report"; readonly request: number; readonly report: Report }
  | { readonly kind: "failed"; readonly request: number | null; readonly message: string };
