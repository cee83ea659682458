import type { AskedAnswer } from "../../tables/askedAnswer.ts";
import type { AskReply, AskRequest } from "./askProtocol.ts";

/** Asks the logs that the page shows, in SQL. */
export type Ask = (
  sql: string,
  options: { readonly mostRows: number | null; readonly signal?: AbortSignal },
) => Promise<AskedAnswer>;

/** The page's side of a reader's questions. */
export interface AskCalls {
  /** @throws {Error} with the engine's own words, or `stopped` once the signal was aborted */
  readonly ask: Ask;
  receive(reply: AskReply): void;
  /** Fails all questions that wait for an answer. */
  end(message: string): void;
}

interface Waiting {
  readonly resolve: (answer: AskedAnswer) => void;
  readonly reject: (error: Error) => void;
}

/** @param post hands a request to the worker, which it starts where that has not been done */
export function openAskCalls(post: (request: AskRequest) => void): AskCalls {
  const waiting = new Map<number, Waiting>();
  let questions = 0;

  const settle = (question: number, how: (asked: Waiting) => void): void => {
    const asked = waiting.get(question);
    waiting.delete(question);
    if (asked !== undefined) how(asked);
  };

  return {
    async ask(sql, { mostRows, signal }) {
      signal?.throwIfAborted();
      questions += 1;
      const question = questions;
      const stop = (): void => post({ kind: "stop", question });
      try {
        return await new Promise<AskedAnswer>((resolve, reject) => {
          waiting.set(question, { resolve, reject });
          signal?.addEventListener("abort", stop);
          post({ kind: "ask", question, sql, mostRows });
        });
      } finally {
        signal?.removeEventListener("abort", stop);
      }
    },
    receive(reply) {
      if (reply.kind === "asked") settle(reply.question, ({ resolve }) => resolve(reply.answer));
      else settle(reply.question, ({ reject }) => reject(new Error(reply.message)));
    },
    end(message) {
      for (const question of [...waiting.keys()]) settle(question, ({ reject }) => reject(new Error(message)));
    },
  };
}
