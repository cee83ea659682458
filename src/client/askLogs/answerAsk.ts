import type { LoadableDatabase } from "../../engine/database.ts";
import { houseTime } from "../../engine/sql/houseTime.ts";
import type { AskReply, AskRequest } from "./askProtocol.ts";

/** The database that questions go to, and the zone of the house whose logs it holds. */
export interface AskedLogs {
  readonly database: LoadableDatabase;
  readonly timeZone: string;
}

/**
 * The worker's side of a reader's questions: each is answered by itself, and one that runs can be stopped.
 *
 * @param logs the logs that are open; asked once
 */
export function answerAsks(
  logs: () => Promise<AskedLogs>,
  say: (reply: AskReply) => void,
): (request: AskRequest) => void {
  const running = new Map<number, AbortController>();
  let ready: Promise<LoadableDatabase> | null = null;

  const opened = async (): Promise<LoadableDatabase> => {
    const { database, timeZone } = await logs();
    await database.query(houseTime(timeZone));
    return database;
  };

  const answer = async ({ question, sql, mostRows }: Extract<AskRequest, { kind: "ask" }>): Promise<void> => {
    const stopping = new AbortController();
    running.set(question, stopping);
    try {
      ready ??= opened();
      const database = await ready;
      const { signal } = stopping;
      const found = await database.ask(sql, { mostRows: mostRows ?? Number.POSITIVE_INFINITY, signal });
      say({ kind: "asked", question, answer: found });
    } catch (error) {
      say({ kind: "ask-failed", question, message: error instanceof Error ? error.message : String(error) });
    } finally {
      running.delete(question);
    }
  };

  return (request) => {
    if (request.kind === "ask") void answer(request);
    else running.get(request.question)?.abort(new Error("stopped"));
  };
}
