/** One row in the making: what each probe read at one time, by the place of its field. */
export interface ProbeRow {
  /** The fields that are not a probe's, as the first line of this time had them. */
  readonly fields: string[];
  readonly line: number;
}

/**
 * Puts a row for each probe together to a row for each time. Rows that agree in everything but probe and value belong
 * together; where a probe reads twice at one time (the doubled hour of a clock change, or a file that repeats itself) the
 * second reading begins a row of its own, and the reader of the format judges it.
 */
export class ProbeTimes {
  private readonly byKey = new Map<string, ProbeRow[]>();
  private readonly inOrder: ProbeRow[] = [];

  /** @param fields all fields of the row in the log format, with those of probes still empty */
  add(fields: readonly string[], field: number, value: string, line: number): void {
    const key = fields.join("\0");
    const rows = this.byKey.get(key) ?? [];
    if (rows.length === 0) this.byKey.set(key, rows);
    let row = rows.find((candidate) => candidate.fields[field] === "");
    if (!row) {
      row = { fields: [...fields], line };
      rows.push(row);
      this.inOrder.push(row);
    }
    row.fields[field] = value;
  }

  /** By the line on which each time was first seen. */
  rows(): readonly ProbeRow[] {
    return this.inOrder;
  }
}
