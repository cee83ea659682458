import type { ComponentChildren } from "preact";

/** A caution of the trade, with where it comes from. */
export function Caution({ source, children }: { readonly source: string; readonly children: ComponentChildren }) {
  return (
    <p class="caution">
      {children} <span class="quiet">({source})</span>
    </p>
  );
}
