import { contentDigest } from "./contentDigest.ts";
import type { PartName, Report, ReportRows } from "./report.ts";
import { formatReport } from "./reportJson.ts";

/** A built report goes out in pieces, so that a page fetches its rows and the parts that it shows. */
export type PieceName = "rows" | PartName;

/** Name of a piece's file inside the tables' folder. @param digest of the whole report */
export const pieceFile = (piece: PieceName, digest: string): string => `${piece}.${digest}.json`;

function piecesOf(report: Report): Readonly<Record<PieceName, unknown>> {
  const { kilnHours, yieldMoisture, thermostat, varieties, steepGermination, changes, review, ...rows } = report;
  return {
    rows: rows satisfies ReportRows,
    kilnHours,
    yieldMoisture,
    thermostat,
    varieties,
    steepGermination,
    changes,
    review,
  };
}

/** The files of a built report, by name, and the digest that all of them carry. */
export function reportFiles(report: Report): {
  readonly digest: string;
  readonly files: ReadonlyMap<string, Uint8Array>;
} {
  const encoder = new TextEncoder();
  const texts = Object.entries(piecesOf(report)).map(([piece, data]) => [piece, formatReport(data)] as const);
  const digest = contentDigest(encoder.encode(texts.map(([, text]) => text).join("\n")));
  const files = texts.map(([piece, text]) => [pieceFile(piece as PieceName, digest), encoder.encode(text)] as const);
  return { digest, files: new Map(files) };
}
