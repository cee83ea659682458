import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { contrast } from "../support/contrast.ts";

const FOLDER = "src/styles/";
const sheet = (name: string): string => readFileSync(`${FOLDER}${name}`, "utf8").replace(/\/\*[\s\S]*?\*\//g, "");
const screen = sheet("tokens.css").split("@media print")[0] ?? "";
const raw = new Map(
  [...screen.matchAll(/--([a-z0-9-]+):\s*([^;]+);/g)].map(([, name, value]) => [name, value?.trim()]),
);

/** A token's colour, followed through `var()`. */
function colour(name: string): string {
  const value = raw.get(name);
  const role = /^var\(--([a-z0-9-]+)\)$/.exec(value ?? "")?.[1];
  if (role !== undefined) return colour(role);
  if (value === undefined) throw new RangeError(`tokens.css has no --${name}`);
  return value;
}

describe("contrast(one, other)", () => {
  it("gives the ends of the scale and a value published by WCAG's own working examples", () => {
    expect(contrast("#000000", "#ffffff")).toAgreeWithin(21, 1e-12);
    expect(contrast("#777777", "#777777")).toAgreeWithin(1, 1e-12);
    // W3C, Understanding SC 1.4.3: #767676 is the lightest grey on white with 4.5:1 (4.54).
    expect(contrast("#767676", "#ffffff")).toLieWithin(4.54, 0.005);
  });
});

describe("tokens", () => {
  it.each(["ink", "ink-soft", "steep", "germination", "kiln", "link"])(
    "--%s reads as text on paper and on wash: 4.5:1",
    (name) => {
      expect(contrast(colour(name), colour("paper"))).toBeGreaterThanOrEqual(4.5);
      expect(contrast(colour(name), colour("wash"))).toBeGreaterThanOrEqual(4.5);
    },
  );

  it.each(["signal", "focus", "field-rule", "steep", "germination", "kiln", "link-rule"])(
    "--%s is seen as a mark on paper: 3:1",
    (name) => {
      expect(contrast(colour(name), colour("paper"))).toBeGreaterThanOrEqual(3);
    },
  );

  it("hold every raw colour of the site", () => {
    const stray = readdirSync(FOLDER)
      .filter((name) => name.endsWith(".css") && name !== "tokens.css")
      .filter((name) => /#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(|\boklch\(/i.test(sheet(name)));
    expect(stray).toEqual([]);
  });

  it("name every token that a style sheet asks for", () => {
    const asked = readdirSync(FOLDER)
      .filter((name) => name.endsWith(".css"))
      .flatMap((name) => [...sheet(name).matchAll(/var\(--([a-z0-9-]+)/g)].map((match) => match[1]));
    expect([...new Set(asked)].filter((name) => !raw.has(name))).toEqual([]);
  });

  it("are all asked for", () => {
    const all = readdirSync(FOLDER).map(sheet).join("\n");
    expect([...raw.keys()].filter((name) => !all.includes(`var(--${name})`))).toEqual([]);
  });
});

describe("print", () => {
  it("is black ink on white, whatever the screen shows", () => {
    const paper = sheet("tokens.css").split("@media print")[1] ?? "";
    expect(paper).toMatch(/--ink:\s*black/);
    expect(paper).toMatch(/--paper:\s*white/);
  });
});
