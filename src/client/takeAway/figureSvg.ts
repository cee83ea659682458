import { textWidth } from "../../figures/textWidth.ts";

/** How a drawing looks is said by the page's sheet; a file has none, so these go into it as they are on the page. */
const LOOKS = [
  "fill",
  "fill-opacity",
  "stroke",
  "stroke-width",
  "stroke-opacity",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "opacity",
  "font-size",
  "font-weight",
  "paint-order",
  "text-anchor",
] as const;

/** What every element has unless somebody says otherwise, or has from the one around it. */
const INITIAL: Readonly<Record<string, string>> = {
  "fill-opacity": "1",
  "stroke-opacity": "1",
  stroke: "none",
  "stroke-dasharray": "none",
  "stroke-linecap": "butt",
  "stroke-linejoin": "miter",
  opacity: "1",
  "paint-order": "normal",
};

const SVG = "http://www.w3.org/2000/svg";
const MARGIN = 16;
const TITLE_SIZE = 18;
const TEXT_SIZE = 13;

function writeLooks(original: Element, copy: Element): void {
  const looks = getComputedStyle(original);
  if (looks.display === "none") {
    copy.remove();
    return;
  }
  copy.removeAttribute("class");
  for (const name of LOOKS) {
    const value = looks.getPropertyValue(name);
    if (value === "" || value === INITIAL[name]) copy.removeAttribute(name);
    else copy.setAttribute(name, value);
  }
  const copies = [...copy.children];
  [...original.children].forEach((child, at) => {
    const its = copies[at];
    if (its !== undefined && child.localName !== "title" && child.localName !== "desc") writeLooks(child, its);
  });
  // An address within the site would lead nowhere from a file.
  if (copy.localName === "a") {
    const group = document.createElementNS(SVG, "g");
    for (const { name, value } of copy.attributes) if (!/href$/.test(name)) group.setAttribute(name, value);
    group.append(...copy.childNodes);
    copy.replaceWith(group);
  }
}

function linesOf(text: string, width: number, size: number, weight: 400 | 600): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidth(longer, size, weight) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === "" ? lines : [...lines, line];
}

export interface FigureWords {
  readonly title: string;
  readonly summary: string;
  /** Whose numbers these are. */
  readonly house: string;
}

/** A drawing as a file of its own. */
export interface FigureFile {
  readonly markup: string;
  readonly width: number;
  readonly height: number;
}

/**
 * A drawing on the page as an SVG file that needs nothing else: its title above, its sentence and its house below, every
 * colour in it as it is on the page, and the site's own face.
 *
 * @param font the face as a `data:` address, or null where it could not be had
 */
export function figureSvg(drawn: SVGSVGElement, words: FigureWords, font: string | null): FigureFile {
  const { width, height } = drawn.viewBox.baseVal;
  const look = getComputedStyle(drawn);
  const wide = width + 2 * MARGIN;
  const title = linesOf(words.title, width, TITLE_SIZE, 600);
  const below = [...linesOf(words.summary, width, TEXT_SIZE, 400), words.house];
  const top = MARGIN + title.length * TITLE_SIZE * 1.3 + 8;
  const tall = Math.ceil(top + height + 8 + below.length * TEXT_SIZE * 1.4 + MARGIN);

  const made = (name: string, attributes: Readonly<Record<string, string | number>>, text?: string): SVGElement => {
    const element = document.createElementNS(SVG, name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
    if (text !== undefined) element.textContent = text;
    return element;
  };
  const root = made("svg", { width: wide, height: tall, viewBox: `0 0 ${wide} ${tall}`, role: "img" });
  root.setAttribute("font-family", look.fontFamily);
  root.append(made("title", {}, words.title), made("desc", {}, words.summary));
  const face = font === null ? "" : `@font-face{font-family:"Ledger Sans";font-weight:200 900;src:url(${font})}`;
  root.append(made("style", {}, `${face}text{font-variant-numeric:tabular-nums lining-nums;white-space:pre}`));
  root.append(made("rect", { width: wide, height: tall, fill: getComputedStyle(document.body).backgroundColor }));
  title.forEach((line, row) => {
    const y = MARGIN + (row + 0.85) * TITLE_SIZE * 1.3;
    root.append(made("text", { x: MARGIN, y, "font-size": TITLE_SIZE, "font-weight": 600, fill: look.color }, line));
  });
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  writeLooks(drawn, copy);
  const plate = made("g", { transform: `translate(${MARGIN},${Math.round(top)})`, color: look.color });
  plate.setAttribute("font-size", look.fontSize);
  plate.append(...copy.childNodes);
  root.append(plate);
  below.forEach((line, row) => {
    const y = Math.round(top + height + 8 + (row + 0.9) * TEXT_SIZE * 1.4);
    root.append(made("text", { x: MARGIN, y, "font-size": TEXT_SIZE, fill: look.color }, line));
  });
  return { markup: new XMLSerializer().serializeToString(root), width: wide, height: tall };
}
