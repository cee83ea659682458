import type { AskedAnswer } from "../../tables/askedAnswer.ts";

/** What the page asks of the worker in a reader's own SQL. */
export type AskRequest =
  /** `mostRows` null: all of them. */
  | { readonly kind: "ask"; readonly question: number; readonly sql: string; readonly mostRows: number | null }
  | { readonly kind: "stop"; readonly question: number };

/** What the worker answers to it. */
export type AskReply =
  | { readonly kind: "asked"; readonly question: number; readonly answer: AskedAnswer }
  | { readonly kind: "ask-failed"; readonly question: number; readonly message: string };
