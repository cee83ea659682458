import type { LogsWanted } from "./workshop.ts";

/** A kiln at work on nearly every night of ten years. */
export const TEN_YEARS: LogsWanted = { runs: 3300, years: 10 };
