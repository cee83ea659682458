import type { ComponentChildren } from "preact";

interface FoldProps {
  readonly summary: string;
  /** Short content is printed even while it is folded. */
  readonly short?: boolean;
  readonly children: ComponentChildren;
}

/** A part of an entry that most readers leave folded. */
export function Fold({ summary, short = false, children }: FoldProps) {
  return (
    <details class={short ? "fold fold-section short" : "fold fold-section"}>
      <summary>{summary}</summary>
      {children}
    </details>
  );
}
