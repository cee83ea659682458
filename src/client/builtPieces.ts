import type { PartName, ReportParts, ReportRows } from "../report/report.ts";
import { type PieceName, pieceFile } from "../report/reportFiles.ts";
import { parseReport } from "../report/reportJson.ts";
import type { LoadedReport } from "./loadedReport.ts";
import type { SitePlaces } from "./sitePlaces.ts";

/** The built report, each piece of it fetched when it is first asked for. */
export interface BuiltPieces {
  /**
   * The rows with the parts asked for, and whatever parts came before; the same object until another part comes.
   *
   * @throws {Error} when a piece cannot be fetched; it may be tried again
   */
  with(parts: readonly PartName[]): Promise<LoadedReport>;
}

export function openBuiltPieces(places: SitePlaces): BuiltPieces {
  const pieces = new Map<PieceName, Promise<unknown>>();
  let report: LoadedReport | null = null;

  const fetched = async (name: PieceName): Promise<unknown> => {
    const response = await fetch(`${places.tables}${pieceFile(name, places.report)}`);
    if (!response.ok) throw new Error(`the report could not be fetched (${response.status})`);
    return parseReport(await response.text());
  };

  const piece = (name: PieceName): Promise<unknown> => {
    const known = pieces.get(name) ?? fetched(name);
    pieces.set(name, known);
    known.catch(() => pieces.delete(name));
    return known;
  };

  return {
    async with(parts) {
      const [rows, ...analysed] = await Promise.all([piece("rows"), ...parts.map(piece)]);
      const held = report;
      const missing = parts.flatMap((part, i) => (held?.[part] === undefined ? [[part, analysed[i]] as const] : []));
      if (held === null || missing.length > 0) {
        const added = Object.fromEntries(missing) as Partial<ReportParts>;
        report = { ...(held ?? (rows as ReportRows)), ...added };
      }
      return report as LoadedReport;
    },
  };
}
