import type { House } from "../../tables/house.ts";
import type { Problem } from "../../tables/problem.ts";
import type { LoadRow } from "../loadRow.ts";
import type { KilnCurve } from "../runPageResult.ts";
import type { RunRow } from "../runRow.ts";
import type { TargetRow } from "../targetRow.ts";

/** A row of customers.csv. */
export interface CustomerRow {
  readonly customer: string;
  readonly name: string | null;
  readonly share: boolean;
  readonly linkKey: string | null;
  readonly note: string | null;
  /** Line in customers.csv, from 1. */
  readonly line: number;
}

/** A row of deliveries.csv. */
export interface DeliveryRow {
  readonly delivery: string;
  readonly customer: string;
  readonly run: string;
  /** Milliseconds at UTC midnight of the date. */
  readonly shippedOn: number;
  readonly massKilograms: number;
  readonly packageKind: string | null;
  readonly packageCount: number | null;
  readonly product: string;
  readonly note: string | null;
}

/** A row of lab.csv: one certificate. */
export interface CertificateRow {
  readonly run: string;
  readonly testedOn: number;
  readonly laboratory: string | null;
  readonly methodSet: string | null;
  /** By the column's name inside: `extract_fine_dry_pct`, `colour_ebc`. */
  readonly values: Readonly<Record<string, number | null>>;
}

/** A line of a file as one text. */
export const placeInFile = (file: string, line: number): string => `${line}\n${file}`;

/**
 * Everything that a house knows which its customers' pages are made from, private columns among it. Nothing of it reaches
 * a page but through `shared/projection.ts`.
 */
export interface SharingSources {
  readonly house: House;
  readonly customers: readonly CustomerRow[];
  readonly deliveries: readonly DeliveryRow[];
  readonly certificates: readonly CertificateRow[];
  readonly runs: readonly RunRow[];
  readonly loads: readonly LoadRow[];
  readonly targets: readonly TargetRow[];
  /** By load; those of which somebody who shares was sent malt. */
  readonly curves: ReadonlyMap<string, KilnCurve>;
  readonly problems: readonly Problem[];
  /** The lot and the target that stand at a {@link placeInFile}: faults there name no run. */
  readonly lotAt: ReadonlyMap<string, string>;
  readonly targetAt: ReadonlyMap<string, Pick<TargetRow, "variety" | "measure">>;
}
