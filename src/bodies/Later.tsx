import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { BodyProvider, type Place, useBody } from "./context.ts";

interface LaterProps {
  readonly place: Place;
  readonly children: ComponentChildren;
}

/**
 * A part of a page that stays as it was drawn while nobody sees it and the page has more pressing things to draw. It keeps
 * the context that it was drawn in, so that nothing inside is drawn half. What has become another place (a figure of another
 * load or kiln) never waits: whoever says what waits knows only the places that stood.
 */
export function Later({ place, children }: LaterProps) {
  const context = useBody();
  const drawn = useRef({ place, context, children });
  if (drawn.current.place !== place || context.waits?.(place) !== true) drawn.current = { place, context, children };
  return <BodyProvider value={drawn.current.context}>{drawn.current.children}</BodyProvider>;
}
