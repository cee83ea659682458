/**
 * Measures the advance widths of the site's sans face in Chromium and writes src/figures/advanceWidths.ts.
 *
 * Node cannot measure text, and figures are drawn in Node; so the widths are measured once, here, and committed. Run it
 * again only when the font's version changes: `node scripts/measure-font.ts`.
 */
import { readFile, writeFile } from "node:fs/promises";
import { chromium } from "playwright-core";

const FONT = "node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2";
const OUT = "src/figures/advanceWidths.ts";
const WEIGHTS = [400, 600] as const;

const codes = (from: number, to: number): number[] => Array.from({ length: to - from + 1 }, (_, i) => from + i);
const characters = [
  ...codes(0x20, 0x7e),
  ...codes(0xa0, 0xff),
  ...[0x2009, 0x2013, 0x2014, 0x2018, 0x2019, 0x201c, 0x201d, 0x2026, 0x202f, 0x20ac, 0x2191, 0x2193, 0x2212],
].map((code) => String.fromCodePoint(code));

const root = new URL("../", import.meta.url);
const font = (await readFile(new URL(FONT, root))).toString("base64");
const browser = await chromium.launch({
  ...(process.env.CHROMIUM ? { executablePath: process.env.CHROMIUM } : { channel: "chromium" }),
  args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-sync"],
});
const page = await browser.newPage();
const measured = await page.evaluate(
  async ({ font, characters, weights }) => {
    const face = new FontFace("Measured", `url(data:font/woff2;base64,${font})`, { weight: "200 900" });
    document.fonts.add(await face.load());
    const span = document.body.appendChild(document.createElement("span"));
    span.style.cssText =
      "position:absolute;white-space:pre;font-size:1000px;font-kerning:none;font-variant-numeric:tabular-nums lining-nums";
    const width = (text: string, weight: number, fallback: string): number => {
      span.style.fontWeight = String(weight);
      span.style.fontFamily = `Measured, ${fallback}`;
      span.textContent = text;
      return span.getBoundingClientRect().width;
    };
    // A character the face lacks comes from the fallback, and so changes its width with it.
    const present = characters.filter((text) => width(text, 400, "monospace") === width(text, 400, "serif"));
    return {
      present,
      widths: weights.map((weight) => present.map((text) => Math.round(width(text, weight, "serif")))),
    };
  },
  { font, characters, weights: [...WEIGHTS] },
);
await browser.close();

const listed = (numbers: readonly number[]): string => `[${numbers.join(", ")}]`;
await writeFile(
  new URL(OUT, root),
  `// Written by scripts/measure-font.ts from Source Sans 3; do not edit by hand.

/** The characters measured, in the order of {@link advanceWidths}. */
export const measuredCharacters: string =
  ${JSON.stringify(measured.present.join(""))};

/** Advance widths in thousandths of an em, tabular lining figures on, kerning off, by weight. */
export const advanceWidths: Readonly<Record<${WEIGHTS.join(" | ")}, readonly number[]>> = {
${WEIGHTS.map((weight, i) => `  ${weight}: ${listed(measured.widths[i] ?? [])},`).join("\n")}
};
`,
);
