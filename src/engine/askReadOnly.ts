import type { AskedAnswer } from "../tables/askedAnswer.ts";
import { type ArrowBatch, askedRows } from "./askedRows.ts";

/** A connection of its own for one question: both builds of the engine have these calls, one answers at once. */
export interface AskConnection {
  query(sql: string): unknown;
  /** Fails where `sql` is not one statement that the engine understands. */
  prepare(sql: string): { close(): unknown } | Promise<{ close(): unknown }>;
  send(sql: string): Promise<AsyncIterable<ArrowBatch> | Iterable<ArrowBatch>>;
  cancelSent(): unknown;
  close(): unknown;
}

export interface AskOptions {
  readonly mostRows: number;
  /** Aborting it stops the query where it is. */
  readonly signal?: AbortSignal;
}

/** Statements that only read. `SET`, `ATTACH`, `COMMIT` and the like would pass a read-only transaction. */
const READS = /^(SELECT|WITH|FROM|VALUES|TABLE|DESCRIBE|SHOW|SUMMARIZE|EXPLAIN)\b/i;

/** White space, comments and opening brackets that may stand before the first word. */
const BEFORE = /^(?:\s+|--[^\n]*(?:\n|$)|\/\*[\s\S]*?\*\/|\()+/;

/** @throws {RangeError} with a sentence for the reader where `sql` is not a question */
function requireQuestion(sql: string): void {
  const begins = sql.replace(BEFORE, "");
  if (begins === "") throw new RangeError("There is no question yet.");
  if (sql.includes("\0")) throw new RangeError("The question holds a zero byte.");
  if (READS.test(begins)) return;
  const word = /^\w+/.exec(begins)?.[0] ?? begins.slice(0, 10);
  throw new RangeError(
    `A question begins with SELECT, WITH or FROM; this one begins with ${word}. The logs can be read here and not changed.`,
  );
}

/**
 * Answers a question that somebody typed, and lets it change nothing: one statement alone, one that only reads, in a
 * read-only transaction on a connection of its own. Each of the three is needed: several statements could commit the
 * transaction first, and a read-only transaction lets temporary tables and attached databases through.
 *
 * @throws {RangeError} with a sentence for the reader; {Error} with the engine's own words; the signal's reason when stopped
 */
export async function askReadOnly(
  connect: () => AskConnection | Promise<AskConnection>,
  sql: string,
  { mostRows, signal }: AskOptions,
): Promise<AskedAnswer> {
  requireQuestion(sql);
  signal?.throwIfAborted();
  const connection = await connect();
  const stop = (): void => void connection.cancelSent();
  signal?.addEventListener("abort", stop);
  try {
    await connection.query("BEGIN TRANSACTION READ ONLY");
    await (await connection.prepare(sql)).close();
    signal?.throwIfAborted();
    const answer = await askedRows(await connection.send(sql), mostRows);
    signal?.throwIfAborted();
    return answer;
  } catch (error) {
    signal?.throwIfAborted();
    throw error;
  } finally {
    signal?.removeEventListener("abort", stop);
    await ended(connection);
  }
}

/** Whatever became of the question, the connection is given back; it may have lost its transaction by then. */
async function ended(connection: AskConnection): Promise<void> {
  try {
    await connection.query("ROLLBACK");
  } catch {
    // Nothing was begun, or the failure ended it.
  }
  await connection.close();
}
