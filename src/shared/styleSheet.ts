import base from "../styles/base.css?raw";
import components from "../styles/components.css?raw";
import figures from "../styles/figures.css?raw";
import layers from "../styles/layers.css?raw";
import layout from "../styles/layout.css?raw";
import print from "../styles/print.css?raw";
import reset from "../styles/reset.css?raw";
import tokens from "../styles/tokens.css?raw";
import fonts from "./styles/fonts.css?raw";
import shared from "./styles/shared.css?raw";

/** Where the faces lie beside the customers' folders, as styles/fonts.css names it. */
const FACES = "faces/";

/**
 * The styles of a customer's page as they stand in it, so that a page can be mailed as one file. The faces are files beside
 * the pages; a page that travels without them falls back on faces stretched to the same widths.
 *
 * @param toRoot the way from the page to the folder that holds all pages: `../../`
 */
export function styleSheet(toRoot: string): string {
  return [layers, fonts, tokens, reset, base, layout, components, figures, print, shared]
    .join("\n")
    .replaceAll(/\/\*[\s\S]*?\*\//g, "")
    .replaceAll(/\n\s*\n+/g, "\n")
    .replaceAll(/^\s+/gm, "")
    .replaceAll(FACES, `${toRoot}${FACES}`);
}
