import { type ComponentChildren, h } from "preact";
import { renderToString } from "preact-render-to-string";
import { type BodyContext, BodyProvider } from "./context.ts";

/** A page's body as markup: the same text that the browser draws over on first use. */
export function renderBody(body: ComponentChildren, context: BodyContext): string {
  return renderToString(h(BodyProvider, { value: context }, body));
}
