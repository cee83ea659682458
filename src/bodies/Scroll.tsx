import type { ComponentChildren } from "preact";

/** A frame that a table wider than the page scrolls in; it takes the focus, so that arrow keys can scroll it. */
export function Scroll({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be in reach of the keyboard (WCAG 2.1.1)
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for controls; this groups a table for the keyboard
    <div class="scroll" role="group" aria-label={label} tabIndex={0}>
      {children}
    </div>
  );
}
