import type { Problem } from "./problem.ts";
import { quotedValue } from "./problemLog.ts";

export type TomlTable = Readonly<Record<string, unknown>>;

export function isTomlTable(value: unknown): value is TomlTable {
  return typeof value === "object" && value !== null && !Array.isArray(value) && !(value instanceof Date);
}

const shown = (value: unknown): string => {
  if (typeof value === "bigint") return String(value);
  if (isTomlTable(value)) return "a table";
  return JSON.stringify(value) ?? String(value);
};

/** Reads typed values out of one TOML table, noting what is wrong and what nobody asked for. */
export class TomlReader {
  private readonly table: TomlTable;
  private readonly where: string;
  private readonly source: string;
  private readonly problems: Problem[];
  private readonly file: string;
  private readonly asked = new Set<string>();

  /**
   * @param where the table's name before its keys, `costs`; empty at the top
   * @param file the file that problems name
   */
  constructor(table: TomlTable, where: string, source: string, problems: Problem[], file = "house.toml") {
    this.file = file;
    this.table = table;
    this.where = where;
    this.source = source;
    this.problems = problems;
  }

  private get(key: string): unknown {
    this.asked.add(key);
    return this.table[key];
  }

  private note(
    key: string,
    rule: string,
    value: unknown,
    message: string,
    hint: string,
    effect: Problem["effect"],
  ): void {
    const named = this.where === "" ? key : `${this.where}.${key}`;
    const line = this.source.split(/\r\n|\r|\n/).findIndex((text) => {
      const start = text.trimStart().replace(/^\[+\s*/, "");
      return start.startsWith(key) || start.startsWith(`"${key}"`);
    });
    this.problems.push({
      file: this.file,
      line: line < 0 ? null : line + 1,
      column: named,
      value: value === undefined ? null : quotedValue(shown(value)),
      rule,
      message,
      hint,
      effect,
      run: null,
    });
  }

  /** Reports a value that has the right type but cannot be used. */
  refuse(key: string, message: string, hint: string): void {
    this.note(key, "setting-refused", this.table[key], message, hint, "value-blanked");
  }

  private wrong(key: string, value: unknown, wanted: string): null {
    const message = `${key} should be ${wanted}; got ${shown(value)}.`;
    this.note(key, "setting-type", value, message, "The default is used until this is mended.", "value-blanked");
    return null;
  }

  text(key: string): string | null {
    const value = this.get(key);
    if (value === undefined) return null;
    if (typeof value !== "string") return this.wrong(key, value, "text in quotation marks");
    return value.trim() === "" ? null : value.trim();
  }

  number(key: string, low: number, high: number): number | null {
    const value = this.get(key);
    if (value === undefined) return null;
    const number = typeof value === "bigint" ? Number(value) : value;
    if (typeof number !== "number" || !Number.isFinite(number)) return this.wrong(key, value, "a number");
    return number < low || number > high ? this.wrong(key, value, `from ${low} to ${high}`) : number;
  }

  flag(key: string): boolean | null {
    const value = this.get(key);
    if (value === undefined || typeof value === "boolean") return value ?? null;
    return this.wrong(key, value, "true or false");
  }

  choice<Choice extends string>(key: string, choices: readonly Choice[]): Choice | null {
    const value = this.get(key);
    if (value === undefined) return null;
    const found = choices.find((choice) => choice === value);
    return found ?? this.wrong(key, value, `one of ${choices.map((choice) => `"${choice}"`).join(", ")}`);
  }

  /** A table inside this one; empty where it is not there. */
  inner(key: string): TomlReader {
    const value = this.get(key);
    if (value !== undefined && !isTomlTable(value)) this.wrong(key, value, `a table, [${key}]`);
    return new TomlReader(isTomlTable(value) ? value : {}, this.nameOf(key), this.source, this.problems, this.file);
  }

  /** Tables of an array, `[[kilns]]`. */
  rows(key: string): readonly TomlReader[] {
    const value = this.get(key);
    if (value === undefined) return [];
    if (!Array.isArray(value) || !value.every(isTomlTable)) {
      this.wrong(key, value, `a list of tables, [[${key}]]`);
      return [];
    }
    return value.map((table) => new TomlReader(table, this.nameOf(key), this.source, this.problems, this.file));
  }

  /** The keys of a table whose keys are free. */
  keys(): readonly string[] {
    return Object.keys(this.table);
  }

  /** A value as the file has it. */
  raw(key: string): unknown {
    return this.get(key);
  }

  /** Notes the keys that nobody asked for; call last. */
  finish(): void {
    for (const key of this.keys()) {
      if (this.asked.has(key)) continue;
      const message = `${this.file} has no setting called ${this.nameOf(key)}.`;
      this.note(key, "unknown-setting", this.table[key], message, "Check its spelling against data/README.md.", "note");
    }
  }

  private nameOf(key: string): string {
    return this.where === "" ? key : `${this.where}.${key}`;
  }
}
