import { type CsvRecord, fieldText, PLAIN, STRAY_QUOTE } from "../csvReader.ts";
import type { DateOrder } from "../house.ts";
import type { ProblemLog } from "../problemLog.ts";
import { quotedValue } from "../problemLog.ts";
import type { RowReader } from "../rowReader.ts";
import { plainHeading } from "./foreignHeadings.ts";
import { MATCH_FILE } from "./foreignMatch.ts";
import type { FieldSource, ForeignPlan, ForeignUse } from "./foreignPlan.ts";
import { ProbeTimes } from "./probeTimes.ts";
import { writtenWhen } from "./writtenWhen.ts";

const withoutTail = (text: string, tail: string | null): string =>
  tail !== null && text.toLowerCase().endsWith(tail.toLowerCase()) ? text.slice(0, -tail.length).trim() : text;

/**
 * Turns the records of a foreign file into records of the log format, each under its own line, and hands them to the
 * reader of the format, which judges them as it judges any other.
 */
export class ForeignRows {
  private readonly plan: ForeignPlan;
  private readonly use: ForeignUse;
  private readonly rows: RowReader;
  private readonly dateOrder: DateOrder;
  private readonly path: string;
  private readonly times: ProbeTimes | null;
  private readonly isWhen: readonly boolean[];
  /** Fields that say something of the row itself, not only which batch, kiln and time it is of. */
  private readonly isOwn: readonly boolean[];
  private readonly words: readonly ReadonlyMap<string, string>[];
  private readonly probeFields: ReadonlyMap<string, number>;
  private readonly knownProbes: ReadonlySet<string>;
  private readonly strangers = new Map<string, { rows: number; readonly line: number }>();
  private toSkip: number;
  private readonly made: CsvRecord;

  constructor(path: string, plan: ForeignPlan, use: ForeignUse, rows: RowReader, dateOrder: DateOrder) {
    this.path = path;
    this.plan = plan;
    this.use = use;
    this.rows = rows;
    this.dateOrder = dateOrder;
    this.toSkip = use.match.skipAfterHeadings;
    this.times = plan.probe ? new ProbeTimes() : null;
    const kinds = new Map(plan.header.mapped.map(({ index, column }) => [index, column.kind]));
    this.isWhen = plan.sources.map((_, i) => kinds.get(i) === "instant" || kinds.get(i) === "date");
    const isKey = new Set(
      plan.header.mapped.flatMap(({ index, column: { kind, stem } }) =>
        kind === "id" || kind === "text" || stem === "at" ? [index] : [],
      ),
    );
    this.isOwn = plan.sources.map(({ kind }, i) => kind !== "fixed" && kinds.has(i) && !isKey.has(i));
    this.words = plan.sources.map((source) =>
      source.kind === "columns"
        ? new Map([...source.column.words].map(([found, meant]) => [plainHeading(found), meant]))
        : new Map(),
    );
    this.probeFields = new Map(
      plan.sources.flatMap((source, i) => (source.kind === "probe" ? [[source.probe, i] as const] : [])),
    );
    this.knownProbes = new Set([...use.match.ignore, ...use.namedElsewhere].map(plainHeading));
    const width = plan.sources.length;
    this.made = {
      text: "",
      count: width,
      starts: new Array<number>(width).fill(0),
      ends: new Array<number>(width).fill(0),
      flags: new Array<number>(width).fill(PLAIN),
      lines: new Array<number>(width).fill(1),
      line: 1,
      lastLine: 1,
      hasStrayQuote: false,
      openQuote: false,
      linesTaken: 1,
    };
  }

  take(record: CsvRecord): void {
    if (record.openQuote) {
      this.rows.read(record);
      return;
    }
    if (this.rows.isBlank(record)) return;
    if (this.toSkip > 0) {
      this.toSkip--;
      return;
    }
    const { width, sources } = this.plan;
    if (record.count < width || (record.count > width && this.rows.hasMore(record, width))) {
      this.rows.readRagged(record, width);
      return;
    }
    const fields = sources.map((source, i) => this.textOf(source, i, record));
    if (this.times && this.plan.probe) {
      this.takeProbe(record, fields, this.times, this.plan.probe);
      return;
    }
    if (this.use.shared && !this.isOwn.some((own, i) => own && fields[i] !== "")) return;
    sources.forEach((source, i) => {
      const from = source.kind === "columns" && source.places.length === 1 ? (source.places[0] as number) : -1;
      this.made.flags[i] = from >= 0 && record.flags[from] === STRAY_QUOTE ? STRAY_QUOTE : PLAIN;
      this.made.lines[i] = from >= 0 ? (record.lines[from] as number) : record.line;
    });
    this.made.hasStrayQuote = record.hasStrayQuote;
    this.hand(fields, record.line);
  }

  /** Call when the file has ended. */
  end(log: ProblemLog): void {
    this.made.flags.fill(PLAIN);
    this.made.hasStrayQuote = false;
    for (const { fields, line } of this.times?.rows() ?? []) {
      this.made.lines.fill(line);
      this.hand(fields, line);
    }
    if (!this.use.keepsUnknown) return;
    for (const [probe, { rows, line }] of this.strangers) {
      log.add({
        file: this.path,
        line,
        column: null,
        value: quotedValue(probe),
        rule: "unknown-probe",
        message: `${MATCH_FILE} says nothing of the probe ${quotedValue(probe)}; its ${rows} ${rows === 1 ? "row was" : "rows were"} not read.`,
        hint: `Name it there under probe_rows.columns, or under ignore if it is not wanted.`,
        effect: "note",
        run: null,
      });
    }
  }

  private textOf(source: FieldSource, field: number, record: CsvRecord): string {
    if (source.kind === "fixed") return source.text;
    if (source.kind === "probe") return "";
    const { places, column } = source;
    let text = "";
    for (const place of places) {
      const part = fieldText(record, place)
        .replaceAll(/[\u00a0\u202f]/g, " ")
        .trim();
      if (part !== "") text += text === "" ? part : ` ${part}`;
    }
    if (text === "") return "";
    const meant = this.words[field]?.get(plainHeading(text));
    if (meant !== undefined) return meant;
    text = withoutTail(text, column.without);
    return this.isWhen[field] ? writtenWhen(text, this.dateOrder, this.use.match.shortYears) : text;
  }

  private takeProbe(
    record: CsvRecord,
    fields: readonly string[],
    times: ProbeTimes,
    { namePlace, valuePlace }: { readonly namePlace: number; readonly valuePlace: number },
  ): void {
    if (namePlace < 0 || valuePlace < 0) return;
    const name = fieldText(record, namePlace).trim();
    const field = this.probeFields.get(plainHeading(name));
    if (field === undefined) {
      if (this.knownProbes.has(plainHeading(name))) return;
      const known = this.strangers.get(name);
      if (known) known.rows++;
      else this.strangers.set(name, { rows: 1, line: record.line });
      return;
    }
    const value = withoutTail(fieldText(record, valuePlace).trim(), this.use.match.probeRows?.without ?? null);
    times.add(fields, field, value, record.line);
  }

  private hand(fields: readonly string[], line: number): void {
    const { made } = this;
    made.text = fields.join("");
    let at = 0;
    fields.forEach((text, i) => {
      made.starts[i] = at;
      at += text.length;
      made.ends[i] = at;
    });
    made.line = line;
    made.lastLine = line;
    this.rows.read(made);
  }
}
