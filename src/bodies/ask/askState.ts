import type { FigureSpec } from "../../figures/figureSpec.ts";
import type { AskFault } from "../../findings/ask/askFault.ts";
import type { AskedAnswer } from "../../tables/askedAnswer.ts";

/** How far a reader's question has come. */
export type AskStage =
  | { readonly kind: "none" }
  | { readonly kind: "asking"; readonly seconds: number; readonly stopping: boolean }
  | { readonly kind: "failed"; readonly fault: AskFault }
  /** `sql` is what was asked, whatever stands in the box by now. */
  | {
      readonly kind: "answered";
      readonly sql: string;
      readonly answer: AskedAnswer;
      readonly figure: FigureSpec | null;
    };

export interface AskState {
  readonly sql: string;
  /** A question of the reader's own that a worked one took the place of; null where none was lost. */
  readonly replaced: string | null;
  readonly stage: AskStage;
}

/** What a live page does when its controls are used; null while no script answers. */
export interface AskHands {
  type(sql: string): void;
  ask(sql: string): void;
  /** Puts the reader's own question back. */
  putBack(): void;
  stop(): void;
  download(): void;
}
