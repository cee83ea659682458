import { printDate } from "../../units/instant.ts";
import { printNumber } from "../../units/print.ts";
import { shownAs } from "../../units/quantity.ts";
import { runCell } from "../controlCharts/chartWords.ts";
import type { FigureSettings } from "../figureSettings.ts";
import type { DataTable } from "../figureSpec.ts";
import { latestFirst } from "../listedRows.ts";
import type { BatchStrip } from "./batchStrips.ts";

/** All measures of a batch in one row. */
export function inOrderTable(strips: readonly BatchStrip[], settings: FigureSettings, dated: string): DataTable {
  const { units, timeZone } = settings;
  const rows = new Map<string, { readonly run: string; readonly at: number; readonly shown: (number | null)[] }>();
  strips.forEach(({ batches }, i) => {
    for (const { run, at, shown } of batches) {
      const key = `${run} ${at}`;
      const row = rows.get(key) ?? { run, at, shown: strips.map(() => null) };
      row.shown[i] = shown;
      rows.set(key, row);
    }
  });
  const sorted = [...rows.values()].sort((a, b) => a.at - b.at || (a.run < b.run ? -1 : 1));
  return latestFirst(
    sorted,
    "batch",
    [
      { label: "batch", numeric: false },
      { label: dated, numeric: false },
      ...strips.map(({ name }) => ({ label: name, numeric: true })),
    ],
    ({ run, at, shown }) => [
      runCell(run, settings),
      printDate(at, timeZone),
      ...strips.map(({ measure: { quantity } }, i) => {
        const value = shown[i] ?? null;
        return value === null ? "" : printNumber(value, shownAs(quantity, units).decimals);
      }),
    ],
  );
}
