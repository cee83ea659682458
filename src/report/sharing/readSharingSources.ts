import { joinLogs } from "../../engine/joinLogs.ts";
import { openNodeDatabase } from "../../engine/node.ts";
import { insideName } from "../../tables/insideName.ts";
import type { LogFile } from "../../tables/logFile.ts";
import { readLogsInParts } from "../../tables/readLogsInParts.ts";
import type { Table } from "../../tables/table.ts";
import { declarationOf } from "../../tables/tableDeclarations.ts";
import { publishedTables } from "../publishTables.ts";
import { curvesByLoad } from "../readingsByLoad.ts";
import { readLoads } from "../readLoads.ts";
import { readRuns } from "../readRuns.ts";
import { readTargets } from "../readTargets.ts";
import type { KilnCurve } from "../runPageResult.ts";
import { everyRow } from "../whereRows.ts";
import {
  type CertificateRow,
  type CustomerRow,
  type DeliveryRow,
  placeInFile,
  type SharingSources,
} from "./sharingSources.ts";

/** Reads single values of a table; what was not recorded is null. */
function cellsOf(table: Table) {
  return {
    text: (column: string, row: number): string | null => {
      const values = table.columns.get(column);
      return values === undefined || values instanceof Float64Array ? null : (values[row] ?? null);
    },
    number: (column: string, row: number): number | null => {
      const values = table.columns.get(column);
      const value = values instanceof Float64Array ? values[row] : undefined;
      return value === undefined || Number.isNaN(value) ? null : value;
    },
  };
}

function rowsOf<Row>(
  table: Table | undefined,
  make: (cells: ReturnType<typeof cellsOf>, row: number, table: Table) => Row,
): readonly Row[] {
  if (table === undefined) return [];
  const cells = cellsOf(table);
  return Array.from({ length: table.rowCount }, (_, row) => make(cells, row, table));
}

/** The rows of customers.csv; none where the file is not there. */
export const customersOf = (table: Table | undefined): readonly CustomerRow[] =>
  rowsOf(table, ({ text }, row, { lineOfRow }) => ({
    customer: text("customer", row) ?? "",
    name: text("name", row),
    share: text("share", row) === "yes",
    linkKey: text("link_key", row),
    note: text("note", row),
    line: lineOfRow[row] ?? 0,
  }));

/** The rows of deliveries.csv; none where the file is not there. */
export const deliveriesOf = (table: Table | undefined): readonly DeliveryRow[] =>
  rowsOf(table, ({ text, number }, row) => ({
    delivery: text("delivery", row) ?? "",
    customer: text("customer", row) ?? "",
    run: text("run", row) ?? "",
    shippedOn: number("shipped_on", row) ?? Number.NaN,
    massKilograms: number("mass_kg", row) ?? Number.NaN,
    packageKind: text("package_kind", row),
    packageCount: number("package_count", row),
    product: text("product", row) ?? "malt",
    note: text("note", row),
  }));

function certificatesOf(table: Table | undefined): readonly CertificateRow[] {
  const measures = declarationOf("lab")
    .columns.filter(({ kind }) => kind === "number")
    .map(insideName);
  return rowsOf(table, ({ text, number }, row) => ({
    run: text("run", row) ?? "",
    testedOn: number("tested_on", row) ?? Number.NaN,
    laboratory: text("laboratory", row),
    methodSet: text("method_set", row),
    values: Object.fromEntries(measures.map((measure) => [measure, number(measure, row)])),
  }));
}

/** What each row of a table holds, by where it stands. */
const byPlace = <Row>(table: Table | undefined, make: Parameters<typeof rowsOf<Row>>[1]): ReadonlyMap<string, Row> =>
  new Map(
    rowsOf(table, (cells, row, whole) => {
      const place = placeInFile(whole.files[whole.fileOfRow[row] ?? 0] ?? "", whole.lineOfRow[row] ?? 0);
      return [place, make(cells, row, whole)] as const;
    }),
  );

/** The loads of which somebody who shares was sent malt: no other load's readings are of any use here. */
function sharedLoads({
  customers,
  deliveries,
  runs,
}: Pick<SharingSources, "customers" | "deliveries" | "runs">): ReadonlySet<string | null> {
  const sharing = new Set(customers.filter(({ share }) => share).map(({ customer }) => customer));
  const sent = new Set(deliveries.filter(({ customer }) => sharing.has(customer)).map(({ run }) => run));
  return new Set(runs.filter(({ run }) => sent.has(run)).map(({ load }) => load));
}

/**
 * Reads a folder of logs for sharing: the joined runs and loads by the one engine, and the rows of the trade's tables as
 * logged. Rows that were set aside are not among them; the problems say which. Readings are read a part after the other, and
 * kept where a page draws them.
 *
 * @param options.now as in `readLogs`
 */
export async function readSharingSources(
  files: readonly LogFile[],
  options: { readonly now?: number } = {},
): Promise<SharingSources> {
  const { house, tables, readReadings } = await readLogsInParts(files, options);
  const database = await openNodeDatabase(publishedTables(tables));
  try {
    await joinLogs(database);
    const trade = {
      customers: customersOf(tables.get("customers")),
      deliveries: deliveriesOf(tables.get("deliveries")),
      runs: await readRuns(database, everyRow),
    };
    const loads = await readLoads(database, everyRow);
    const drawn = sharedLoads(trade);
    const curves = new Map<string, KilnCurve>();
    const { problems } = await readReadings((part) => {
      // All loads: one under way ends where the next of its kiln begins, whoever that went to.
      for (const [{ load }, { at, airOnCelsius, airOffCelsius, bedCelsius }] of curvesByLoad(part, loads)) {
        if (drawn.has(load)) curves.set(load, { at, airOnCelsius, airOffCelsius, bedCelsius });
      }
    });
    return {
      house,
      ...trade,
      certificates: certificatesOf(tables.get("lab")),
      loads,
      targets: await readTargets(database),
      curves,
      problems,
      lotAt: byPlace(tables.get("grain-lots"), ({ text }, row) => text("lot", row) ?? ""),
      targetAt: byPlace(tables.get("targets"), ({ text }, row) => ({
        variety: text("variety", row) ?? "",
        measure: text("measure", row) ?? "",
      })),
    };
  } finally {
    await database.close();
  }
}
