import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { BodyProvider, type Place, useBody } from "./context.ts";

interface LaterProps {
  readonly place: Place;
  readonly children: ComponentChildren;
}

/**
 * A part of a page that stays as it was drawn while nobody sees it and the page has more pressing things to draw. It keeps
 * the context that it was drawn in, so that nothing inside is drawn half.
 */
export function Later({ place, children }: LaterProps) {
  const context = useBody();
  const drawn = useRef({ context, children });
  if (context.waits?.(place) !== true) drawn.current = { context, children };
  return <BodyProvider value={drawn.current.context}>{drawn.current.children}</BodyProvider>;
}
