import { readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { homedir, tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type MarkedHouse, type Marker, markedHouse } from "../support/markedHouse.ts";
import { everyFile, keysIn, shareInChild } from "../support/shareInChild.ts";
import { projectRoot } from "../support/sourceFiles.ts";

let house: MarkedHouse;
let out: string;
let files: ReadonlyMap<string, Buffer>;
let keys: ReadonlyMap<string, string>;

const despite = ["first", "second"].flatMap((owner) => ["--despite", `run-of-${owner}-zqx`]);

beforeAll(() => {
  house = markedHouse();
  out = `${house.folder}-out`;
  const { status, said } = shareInChild("--logs", house.folder, "--out", out, ...despite);
  expect(said).not.toContain("Nothing was shared");
  expect(status).toBe(0);
  files = everyFile(out);
  keys = keysIn(house.folder);
});

afterAll(() => {
  for (const folder of [house.folder, out]) rmSync(folder, { recursive: true, force: true });
});

/** Places of a text in any file's bytes or path, as it is, as HTML writes it, percent-encoded, in base64 or hex. */
function foundIn(text: string, among: ReadonlyMap<string, Buffer> = files): string[] {
  const bytes = Buffer.from(text, "utf8");
  // A third of base64's alignments each, less the characters that its neighbours share.
  const base64 = [0, 1, 2].map((shift) =>
    Buffer.concat([Buffer.alloc(shift), bytes])
      .toString("base64")
      .slice(shift === 0 ? 0 : shift + 1, -4),
  );
  const packed = base64.filter((form) => form.length >= 8);
  const forms = [text, encodeURIComponent(text), text.replaceAll("-", "&#45;"), bytes.toString("hex"), ...packed];
  const wide = Buffer.from(text, "utf16le");
  const lower = text.toLowerCase();
  return [...among].flatMap(([path, content]) =>
    forms.some((form) => content.includes(form) || path.includes(form)) ||
    content.includes(wide) ||
    content.toString("latin1").toLowerCase().includes(lower)
      ? [path]
      : [],
  );
}

const leaks = (markers: readonly Marker[], among?: ReadonlyMap<string, Buffer>): string[] =>
  markers.flatMap(({ place, text }) => foundIn(text, among).map((path) => `${place} (${text}) in ${path}`));

const ofCustomer = (customer: string): ReadonlyMap<string, Buffer> =>
  new Map([...files].filter(([path]) => path.startsWith(`${keys.get(customer)}/`)));

/** A page's words without its markup, styles and drawings. */
const words = (html: string): string =>
  html
    .replaceAll(/<style[\s\S]*?<\/style>|<svg[\s\S]*?<\/svg>/g, " ")
    .replaceAll(/<[^>]*>/g, " ")
    .replaceAll(/[\u202f\u00a0]/g, "");

describe("the customers' pages", () => {
  it("show what may pass of the customer's own batch: the search can find", () => {
    const own = ofCustomer("customer-first-zqx");
    expect(house.shownToFirst.length).toBeGreaterThan(3);
    expect(house.shownToFirst.filter(({ text }) => foundIn(text, own).length === 0)).toEqual([]);
    for (const text of ["contact-shown", "note-shown", "statistics, not a food-safety release"]) {
      const pages = [...own.values()].map((page) => page.toString("utf8").toLowerCase());
      expect(pages.every((page) => page.includes(text))).toBe(true);
    }
  });

  it("hold no text of any column that may not pass, in no file, name or form", () => {
    // Every table has texts that may not pass, if only a column of the house's own.
    expect(new Set(house.secret.map(({ place }) => place.split(".")[0])).size).toBe(16);
    expect(leaks(house.secret)).toEqual([]);
  });

  it("hold nothing that ends as every planted text does but what may pass", () => {
    const shown = new Set([...house.shownToFirst, ...house.shownToSecond].map(({ text }) => text));
    for (const [path, content] of files) {
      for (const [planted] of content.toString("latin1").matchAll(/[\w-]*zqx/g)) expect(shown, path).toContain(planted);
    }
  });

  it("print no number of any column that may not pass", () => {
    const printed = new Set(
      [...files].flatMap(([, content]) => words(content.toString("utf8")).match(/\d+(?:\.\d+)?/g) ?? []),
    );
    const forms = ({ text }: Marker): readonly string[] => [0, 1, 2].map((decimals) => Number(text).toFixed(decimals));
    const passing = new Set(house.shownNumbers.flatMap(forms));
    const ownForms = (marker: Marker) =>
      [marker.text, ...forms(marker)].filter((form) => form.length >= 4 && !passing.has(form));
    const telling = house.secretNumbers.filter((marker) => ownForms(marker).length > 0);
    expect(telling.length).toBeGreaterThan(120);
    expect(telling.filter((marker) => ownForms(marker).some((form) => printed.has(form)))).toEqual([]);
    // Deliveries do print theirs: the search can find.
    expect(printed).toContain("1250");
  });

  it("show a customer nothing of another", () => {
    expect(house.shownToSecond.length).toBeGreaterThan(3);
    expect(leaks(house.shownToSecond, ofCustomer("customer-first-zqx"))).toEqual([]);
    expect(leaks(house.shownToFirst, ofCustomer("customer-second-zqx"))).toEqual([]);
    const otherKey = keys.get("customer-second-zqx") ?? "";
    expect(otherKey).not.toBe("");
    expect(foundIn(otherKey, ofCustomer("customer-first-zqx"))).toEqual([]);
  });

  it("have folders for those who share and for nobody else, and nowhere a list of them", () => {
    expect([...keys.keys()]).toEqual(["customer-first-zqx", "customer-second-zqx"]);
    const tops = new Set([...files.keys()].map((path) => path.split("/")[0]));
    expect(tops).toEqual(new Set([...keys.values(), "index.html", "404.html", "robots.txt", "faces"]));
    for (const key of keys.values()) expect(foundIn(key).filter((path) => !path.startsWith(`${key}/`))).toEqual([]);
  });

  it("are HTML, the two faces as their packages have them, and robots.txt: nothing packed, no script, table, map or path", () => {
    const { resolve } = createRequire(import.meta.url);
    const faces = ["source-serif-4/files/source-serif-4", "source-sans-3/files/source-sans-3"].map((name) =>
      readFileSync(resolve(`@fontsource-variable/${name}-latin-wght-normal.woff2`)).toString("base64"),
    );
    for (const [path, content] of files) {
      expect(path).toMatch(/^(?:[A-Za-z0-9_-]+\/){0,3}(?:index|404)\.html$|^faces\/\w+\.woff2$|^robots\.txt$/);
      if (path.endsWith(".woff2")) expect(faces).toContain(content.toString("base64"));
      else expect(() => new TextDecoder("utf-8", { fatal: true }).decode(content)).not.toThrow();
      if (path.endsWith(".html"))
        expect(content.toString("utf8")).not.toMatch(
          /<script|sourceMapping|"data:(?!,)|url\(\s*["']?(?!faces|"?(?:\.\.\/)*faces)|\shref="https?:|\ssrc=/i,
        );
    }
    for (const place of [projectRoot, homedir(), tmpdir(), house.folder, "node_modules"]) {
      const found = foundIn(place).filter((path) => !path.endsWith(".woff2"));
      expect(found, place).toEqual([]);
    }
  });

  it("ask not to be found, followed or framed with a referrer, and let nothing in", () => {
    for (const [path, content] of files) {
      if (!path.endsWith(".html")) continue;
      const page = content.toString("utf8");
      expect(page).toContain('<meta name="robots" content="noindex, nofollow, noarchive"');
      expect(page).toContain('<meta name="referrer" content="no-referrer"');
      expect(page).toMatch(
        /http-equiv="content-security-policy" content="default-src (?:'|&#39;)none(?:'|&#39;);[^"]*"/,
      );
      expect(page).not.toMatch(/script-src|unsafe|connect-src/);
    }
    // Google Search Central, "Block Search indexing with noindex": a page that robots.txt blocks can still be listed, since its
    // noindex is never read (from memory). So nothing is blocked, and the file names nothing.
    const robots = files
      .get("robots.txt")
      ?.toString("utf8")
      .replaceAll(/^#.*\n/gm, "");
    expect(robots).toBe("User-agent: *\nDisallow:\n");
  });
});

describe("the record of the share", () => {
  it("lies beside the logs, hidden, with neither key nor passphrase in it", () => {
    const record = readFileSync(join(house.folder, ".shared.json"), "utf8");
    for (const key of keys.values()) expect(record).not.toContain(key);
  });
});
