import type { CellFault } from "./cellFault.ts";
import { CsvReader, type CsvRecord, fieldText } from "./csvReader.ts";
import { DecimalMarks } from "./decimalMarks.ts";
import type { TableDeclaration } from "./declarations.ts";
import { decoded, UndecodableText } from "./decode.ts";
import { declaredOf } from "./fileOf.ts";
import { recogniseDelimiter } from "./firstLine.ts";
import { planForeign } from "./foreign/foreignPlan.ts";
import { ForeignRows } from "./foreign/foreignRows.ts";
import { afterLines } from "./foreign/skipLines.ts";
import { type HeaderMap, mapHeader } from "./headerMap.ts";
import type { FileDeclaration, House } from "./house.ts";
import type { LocalTime } from "./localTime.ts";
import type { LogFile } from "./logFile.ts";
import { type ProblemLog, quotedValue } from "./problemLog.ts";
import { RowReader } from "./rowReader.ts";
import { settlePending } from "./settlePending.ts";
import type { ColumnValues } from "./table.ts";

/** The rows of one file, before files of one table are put together. */
export interface FileRows {
  readonly path: string;
  readonly rowCount: number;
  readonly columns: ReadonlyMap<string, ColumnValues>;
  readonly unknown: ReadonlyMap<string, readonly (string | null)[]>;
  readonly units: ReadonlyMap<string, string>;
  readonly lines: Int32Array;
}

/** Everything that reading one file needs to know. */
export interface FileContext {
  readonly house: House;
  readonly localTime: LocalTime;
  readonly log: ProblemLog;
}

/** How the file departs from the house's habits: as its match says, where it has one, else as house.toml does. */
function habitsOf(house: House, { path, foreign }: LogFile): FileDeclaration {
  const declared = declaredOf(house, path);
  const match = foreign?.match;
  return {
    encoding: match?.encoding ?? declared.encoding,
    delimiter: match?.delimiter ?? declared.delimiter,
    decimal: match?.decimal ?? declared.decimal,
    dateOrder: match?.dateOrder ?? declared.dateOrder,
  };
}

/** Text held back until the first line is complete; no heading is longer. */
const LONGEST_FIRST_LINE = 1_000_000;

class FileReader {
  readonly file: LogFile;
  readonly declaration: TableDeclaration;
  readonly context: FileContext;
  rows: RowReader | null = null;
  decimals: DecimalMarks | null = null;
  header: HeaderMap | null = null;
  failed = false;
  private held = "";
  private csv: CsvReader | null = null;
  private foreign: ForeignRows | null = null;

  constructor(file: LogFile, declaration: TableDeclaration, context: FileContext) {
    this.file = file;
    this.declaration = declaration;
    this.context = context;
  }

  /** The whole file cannot be read; its rows go on being counted. */
  fail(fault: CellFault, line: number | null, column: string | null = null, value: string | null = null): void {
    this.failed = true;
    this.note(fault, line, column, value, "file-set-aside");
  }

  note(
    fault: CellFault,
    line: number | null,
    column: string | null,
    value: string | null,
    effect: "file-set-aside" | "value-blanked" | "note",
    values = 1,
  ): void {
    this.context.log.add(
      {
        file: this.file.path,
        line,
        column: column === null ? null : quotedValue(column),
        value: value === null ? null : quotedValue(value),
        rule: fault.rule,
        message: fault.message,
        hint: fault.hint,
        effect,
        run: null,
      },
      values,
    );
  }

  push(piece: string): void {
    if (this.csv) {
      this.csv.push(piece);
      return;
    }
    this.held += piece;
    this.begin(this.held.length > LONGEST_FIRST_LINE);
  }

  end(): void {
    if (!this.csv) this.begin(true);
    this.csv?.end();
    this.foreign?.end(this.context.log);
  }

  private begin(final: boolean): void {
    const declared = habitsOf(this.context.house, this.file);
    const skipLines = this.file.foreign?.match.skipLines ?? 0;
    const start = afterLines(this.held, skipLines, final);
    if (start === null) return;
    const first = recogniseDelimiter(this.held.slice(start), declared.delimiter, final);
    if (!first) return;
    if (first.fault) this.fail(first.fault, 1, null, this.held.split(/[\r\n]/)[0] ?? "");
    const from = start + first.skip;
    const skipped = this.held.slice(0, from).match(/\r\n|\r|\n/g)?.length ?? 0;
    this.decimals = new DecimalMarks(declared.decimal, first.delimiter);
    this.csv = new CsvReader(first.delimiter, (record) => this.take(record), 1 + skipped);
    this.csv.push(this.held.slice(from));
    this.held = "";
  }

  private take(record: CsvRecord): void {
    if (this.foreign) this.foreign.take(record);
    else if (this.rows) this.rows.read(record);
    else this.takeHeader(record);
  }

  private takeHeader(record: CsvRecord): void {
    const first = Array.from({ length: record.count }, (_, index) => fieldText(record, index).trim());
    if (!record.openQuote && first.every((heading) => heading === "")) return;
    const { declaration, context, file } = this;
    const use = file.foreign;
    const headings = use?.match.headings === false ? first.map((_, index) => `column ${index + 1}`) : first;
    const plan = use ? planForeign(headings, use, declaration) : null;
    const header = plan?.header ?? mapHeader(headings, declaration);
    const keepUnknown = !declaration.place.endsWith("/");
    this.header = header;
    const faults = this.failed ? [] : header.faults;
    for (const fault of faults) {
      if (fault.effect === "file-set-aside") this.fail(fault, record.line, fault.heading);
      else if (fault.effect === "note") {
        const said = keepUnknown
          ? fault
          : { ...fault, hint: fault.hint.replace("It is kept with the run and used nowhere else.", "It is not read.") };
        this.note(said, record.line, fault.heading, null, "note");
      }
    }
    const cells = {
      decimals: this.decimals as DecimalMarks,
      dateOrder: habitsOf(context.house, file).dateOrder ?? context.house.dateOrder,
      localTime: context.localTime,
    };
    this.rows = new RowReader(file.path, header, cells, context.log, keepUnknown, this.failed);
    this.headerLine = record.line;
    if (plan && use) this.foreign = new ForeignRows(file.path, plan, use, this.rows, cells.dateOrder);
    if (record.openQuote) this.rows.read(record);
    else if (use?.match.headings === false) this.foreign?.take(record);
  }

  headerLine = 1;
}

/** What a finished reader holds, or null where the file as a whole cannot be used. */
function finish(reader: FileReader): FileRows | null {
  const { rows, header, decimals, context, file } = reader;
  if (!rows || !header) {
    reader.note(
      {
        rule: "empty-file",
        message: "The file is empty.",
        hint: "Put the column names on its first line, as in data/templates.",
      },
      null,
      null,
      null,
      "note",
    );
    return null;
  }
  const mixed = decimals?.fault() ?? null;
  if (mixed) reader.fail(mixed, mixed.line, null, mixed.value);
  if (reader.failed) {
    context.log.countsOf(file.path).rowsSetAside = rows.dataRows;
    return null;
  }
  for (const fault of header.faults) {
    if (fault.effect !== "value-blanked") continue;
    const message = `${fault.message} Values not read: ${rows.valuesUnread}.`;
    reader.note({ ...fault, message }, reader.headerLine, fault.heading, null, "value-blanked", rows.valuesUnread);
  }
  settlePending(rows, reader.declaration);
  const { rowCount, values, lines } = rows.store.finish();
  const columns = new Map<string, ColumnValues>();
  const units = new Map<string, string>();
  for (const { mapped, slot } of rows.readers) {
    columns.set(mapped.inside, values[slot] as ColumnValues);
    if (mapped.suffix || mapped.utc) units.set(mapped.inside, mapped.suffix?.suffix ?? "utc");
  }
  const unknown = new Map(rows.unknownSlots.map(({ heading, slot }) => [heading, values[slot] as (string | null)[]]));
  return { path: file.path, rowCount, columns, unknown, units, lines };
}

/**
 * Reads one log file, piece by piece, into typed columns. Faults go to the context's log; null where the file as a
 * whole cannot be used. Never throws for anything that a file may hold.
 */
export async function readTableFile(
  file: LogFile,
  declaration: TableDeclaration,
  context: FileContext,
): Promise<FileRows | null> {
  const reader = new FileReader(file, declaration, context);
  const { encoding } = habitsOf(context.house, file);
  try {
    for await (const piece of decoded(file.chunks(), encoding)) reader.push(piece);
  } catch (error) {
    if (!(error instanceof UndecodableText)) throw error;
    // How far reading got depends on the size of the pieces; what was found by then says nothing of a file set aside.
    context.log.forget(file.path);
    reader.fail(error.fault, error.line);
    return null;
  }
  reader.end();
  return finish(reader);
}
