import type { CellFault } from "./cellFault.ts";

/** Thrown inside the reader when bytes are not the text they should be; it becomes a Problem of the whole file. */
export class UndecodableText extends Error {
  readonly fault: CellFault;
  /** Roughly where, where that can be said. */
  readonly line: number | null;

  constructor(fault: CellFault, line: number | null) {
    super(fault.message);
    this.fault = fault;
    this.line = line;
  }
}

const declareIt =
  'Declare it in house.toml, [files."name.csv"] encoding = "windows-1252" (or what it is), or save the file as UTF-8.';

function byteOrderMark(bytes: Uint8Array): string | null {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return "utf-8";
  if (a === 0xff && b === 0xfe) return "utf-16le";
  if (a === 0xfe && b === 0xff) return "utf-16be";
  return null;
}

function notText(bytes: Uint8Array): CellFault | null {
  const [a, b, c, d] = bytes;
  if (a === 0x50 && b === 0x4b && c === 3 && d === 4) {
    return {
      rule: "not-text",
      message: "The file is a spreadsheet workbook or an archive, not a CSV file.",
      hint: "Save the sheet as CSV (UTF-8).",
    };
  }
  return null;
}

function lineBreaks(text: string): number {
  let found = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) found++;
  for (let at = text.indexOf("\r"); at >= 0; at = text.indexOf("\r", at + 1)) if (text[at + 1] !== "\n") found++;
  return found;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** True for an encoding that every browser and Node can read. */
export function isEncoding(label: string): boolean {
  try {
    new TextDecoder(label);
    return true;
  } catch {
    return false;
  }
}

/** What a disk or a picker has to say when a file cannot be read after all. */
async function* guarded(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield* chunks;
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new UndecodableText(
      {
        rule: "file-unreadable",
        message: `The file could not be read: ${why}.`,
        hint: "See whether it is still there and whether another program holds it.",
      },
      null,
    );
  }
}

/**
 * Text of a file in pieces: by its byte order mark, else as declared, else as UTF-8. Never guesses, never replaces:
 *
 * @throws {UndecodableText} when the bytes do not fit
 */
export async function* decoded(chunks: AsyncIterable<Uint8Array>, declared: string | null): AsyncGenerator<string> {
  let decoder: TextDecoder | null = null;
  let label = declared ?? "utf-8";
  let head: Uint8Array = new Uint8Array(0);
  let lines = 1;
  let endedInReturn = false;

  const text = (bytes: Uint8Array, final: boolean): string => {
    if (!decoder) {
      const fault = notText(bytes);
      if (fault) throw new UndecodableText(fault, null);
      label = byteOrderMark(bytes) ?? label;
      decoder = new TextDecoder(label, { fatal: true });
    }
    let piece: string;
    try {
      piece = decoder.decode(bytes, { stream: !final });
    } catch {
      const before = new TextDecoder(label).decode(bytes).split("\ufffd")[0] ?? "";
      const line = lines + lineBreaks(before) - (endedInReturn && before.startsWith("\n") ? 1 : 0);
      throw new UndecodableText(
        {
          rule: "wrong-encoding",
          message: `The file is not text in ${label.toUpperCase()}, from about line ${line} on.`,
          hint: declareIt,
        },
        line,
      );
    }
    if (piece.includes("\0")) {
      throw new UndecodableText(
        {
          rule: "wrong-encoding",
          message: "The file holds zero bytes: it is UTF-16 without a byte order mark, or not text at all.",
          hint: 'Declare it in house.toml, [files."name.csv"] encoding = "utf-16le", or save the file as UTF-8.',
        },
        null,
      );
    }
    lines += lineBreaks(piece) - (endedInReturn && piece.startsWith("\n") ? 1 : 0);
    endedInReturn = piece === "" ? endedInReturn : piece.endsWith("\r");
    return piece;
  };

  for await (const chunk of guarded(chunks)) {
    // The first four bytes decide, however small the pieces are.
    if (!decoder && head.length + chunk.length < 4) {
      head = joined(head, chunk);
      continue;
    }
    const bytes = head.length > 0 ? joined(head, chunk) : chunk;
    head = new Uint8Array(0);
    const piece = text(bytes, false);
    if (piece !== "") yield piece;
  }
  const last = text(head, true);
  if (last !== "") yield last;
}
