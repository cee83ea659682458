const GEOMETRY = new Set(["x", "y", "x1", "y1", "x2", "y2", "cx", "cy", "r", "width", "height", "d", "transform"]);

/** All that a mark's link holds. */
const LINK = new Set(["href", "tabindex"]);

/** To write an attribute costs far more than to read it, and of hundreds of marks most are as they should be. */
function putAttribute(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** A number as short as SVG reads it at one decimal: `12.04` is `12`, `-0.04` is `0`, `0.55` is `.6`. */
function oneDecimal(text: string): string {
  const rounded = Math.round(Number(text) * 10) / 10;
  return rounded === 0 ? "0" : String(rounded).replace(/^(-?)0\./, "$1.");
}

/** Every number of a path, a transform or a coordinate, to one decimal. */
export function roundNumbers(text: string): string {
  return text.replace(/-?(?:\d+\.\d+|\.\d+)(?:e[-+]?\d+)?/g, (number, at: number) => {
    const short = oneDecimal(number);
    // A sign or a point that kept two numbers apart may be gone.
    const parted = /^[-.]/.test(number) && !short.startsWith("-") && /[\d.]/.test(text[at - 1] ?? "");
    return parted ? ` ${short}` : short;
  });
}

/** Half a pixel that Plot adds in Node and on plain screens but not on fine ones: taken off everywhere. */
const HALF_PIXEL = /^translate\(0(?:\.5)?,0(?:\.5)?\)$/;

/** Only addresses within the site (or plain web addresses) may stand behind a mark: Plot itself passes `javascript:`. */
function safeHref(href: string): string {
  if (/^[a-z][a-z0-9+.-]*:/i.test(href.trim()) && !/^https?:/i.test(href.trim())) {
    throw new RangeError(`a mark's link must be an address within the site; got ${href}`);
  }
  return href;
}

function tidyElement(element: Element, idPrefix: string, ids: Map<string, string>): void {
  for (const { name, value } of [...element.attributes]) {
    if (name === "style" || (name.startsWith("aria-") && name !== "aria-hidden")) element.removeAttribute(name);
    // It goes without saying, unless a group about it says otherwise.
    else if (name === "text-anchor" && value === "start" && element.closest("g[text-anchor]") === null)
      element.removeAttribute(name);
    else if (name === "id" || /url\(#/.test(value)) {
      // Plot numbers its clip paths through the life of the program; here they count from the figure.
      element.setAttribute(
        name,
        value.replace(/(^|url\(#)([^)]+)/, (_all, before: string, id: string) => {
          const known = ids.get(id) ?? `${idPrefix}-${ids.size + 1}`;
          ids.set(id, known);
          return before + known;
        }),
      );
    } else if (name === "transform" && HALF_PIXEL.test(value)) element.removeAttribute(name);
    else if (GEOMETRY.has(name)) putAttribute(element, name, roundNumbers(value));
  }
  if (element.localName === "a") {
    const href = element.getAttribute("href") ?? element.getAttribute("xlink:href") ?? "";
    for (const { name } of [...element.attributes]) if (!LINK.has(name)) element.removeAttribute(name);
    putAttribute(element, "href", safeHref(href));
    // For the pointer alone: from the keyboard and to a screen reader the table under the figure has the same links.
    putAttribute(element, "tabindex", "-1");
  }
}

/**
 * Makes a drawing fit for a page under a strict content security policy and the same wherever it is drawn: no style
 * element or attribute, ids that begin with `idPrefix` and count from one, coordinates to one decimal.
 *
 * @throws {RangeError} when a mark's link is neither relative nor http(s).
 */
export function tidyDrawing(svg: Element, idPrefix: string): void {
  for (const style of [...svg.querySelectorAll("style")]) style.remove();
  const ids = new Map<string, string>();
  for (const element of [svg, ...svg.querySelectorAll("*")]) tidyElement(element, idPrefix, ids);
}
