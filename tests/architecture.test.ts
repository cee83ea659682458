import { describe, expect, it } from "vitest";
import { folderOf, type SourceFile, sourceFiles } from "./support/sourceFiles.ts";

/** Which folders of src a folder may import from, besides itself. `types` are for `import type` alone. */
const RULE: Readonly<Record<string, { values: readonly string[]; types: readonly string[] }>> = {
  units: { values: [], types: [] },
  tables: { values: ["units"], types: [] },
  analysis: { values: ["units"], types: [] },
  malting: { values: ["units", "analysis"], types: [] },
  findings: { values: ["units"], types: ["analysis", "malting", "report", "tables"] },
  figures: { values: ["units"], types: ["analysis", "malting", "report", "tables"] },
  engine: { values: ["units", "tables"], types: [] },
  report: { values: ["units", "tables", "engine", "analysis", "malting"], types: ["findings", "figures"] },
  bodies: { values: ["units", "findings", "figures"], types: ["analysis", "malting", "report", "tables"] },
};

/** What pure folders may take from outside the project: calculation and drawing, nothing that reads the world. */
const PURE: Readonly<Record<string, readonly RegExp[]>> = {
  units: [],
  tables: [/^smol-toml$/, /^temporal-polyfill/],
  analysis: [/^ml-matrix$/, /^simple-statistics$/, /^@stdlib\/stats-base-dists-/],
  malting: [],
  findings: [],
  figures: [/^@observablehq\/plot$/],
  bodies: [/^preact/],
};

/** Reaches into the world that a pure function has no business with. Comments and strings are taken out first. */
const IMPURE = [
  /\bDate\.now\b/,
  /\bnew Date\(\s*\)/,
  /\bMath\.random\b/,
  /\bconsole\./,
  /\bprocess\./,
  /\bglobalThis\b/,
  /\bwindow\./,
  /\bfetch\(/,
  /\bsetTimeout\b/,
  /\bnavigator\b/,
];

/** A document that is handed in is no reach; the page's own, taken from nowhere, is. */
const takesPage = (code: string): boolean => /(?<![.\w])document\./.test(code) && !/\bdocument(?::|,| \})/.test(code);

const CODE = sourceFiles("src", [".ts", ".tsx"]);

const withoutWords = (text: string): string =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, "")
    .replace(/\/\/.*$/gm, "")
    .replace(/"(?:[^"\\\n]|\\.)*"/g, '""');

function breaches(file: SourceFile): string[] {
  const folder = folderOf(file.path);
  const rule = RULE[folder];
  if (rule === undefined) return [];
  const found: string[] = [];
  for (const { specifier, typeOnly, target } of file.imports) {
    if (target !== null) {
      const from = folderOf(target);
      // The review joins the findings of all analyses, so it alone in the report may take them in.
      if (file.path.startsWith("src/report/review/") && target.startsWith("src/findings/facts/")) continue;
      const allowed = from === folder || rule.values.includes(from) || (typeOnly && rule.types.includes(from));
      if (!allowed) found.push(`${file.path} imports ${typeOnly ? "types" : "values"} from ${target}`);
    } else if (PURE[folder] !== undefined && !typeOnly) {
      if (!PURE[folder].some((pattern) => pattern.test(specifier))) found.push(`${file.path} imports ${specifier}`);
    }
  }
  return found;
}

/** Circles of files that import from each other, were it types alone: neither could be read without the other. */
function circles(files: readonly SourceFile[]): string[] {
  const edges = new Map(files.map(({ path, imports }) => [path, imports.flatMap(({ target }) => target ?? [])]));
  const found: string[] = [];
  const settled = new Set<string>();
  const visit = (path: string, trail: readonly string[]): void => {
    const start = trail.indexOf(path);
    if (start >= 0) found.push([...trail.slice(start), path].join(" → "));
    if (start >= 0 || settled.has(path)) return;
    for (const next of edges.get(path) ?? []) visit(next, [...trail, path]);
    settled.add(path);
  };
  for (const path of edges.keys()) visit(path, []);
  return found;
}

describe("the import rule", () => {
  it("is kept by every file of the ruled folders", () => {
    expect(CODE.flatMap(breaches)).toEqual([]);
  });

  it("covers every folder that it names", () => {
    const present = new Set(CODE.map(({ path }) => folderOf(path)));
    expect(Object.keys(RULE).filter((folder) => !present.has(folder))).toEqual([]);
  });

  it("leaves no circle of files", () => {
    expect(circles(CODE)).toEqual([]);
  });

  it("catches a breach: a test of the test", () => {
    const text = 'import { x } from "../engine/node.ts";';
    const imports = [{ specifier: "../engine/node.ts", typeOnly: false, target: "src/engine/node.ts" }];
    expect(breaches({ path: "src/analysis/wrong.ts", text, imports })).toHaveLength(1);
  });
});

describe("pure folders", () => {
  it("touch no clock, random source, console, page or network", () => {
    const reaching = CODE.filter(({ path }) => folderOf(path) in PURE).flatMap(({ path, text }) => {
      const code = withoutWords(text);
      const found = IMPURE.filter((pattern) => pattern.test(code)).map((pattern) => `${path}: ${pattern.source}`);
      return takesPage(code) ? [...found, `${path}: document`] : found;
    });
    expect(reaching).toEqual([]);
  });
});

describe("the customers' build", () => {
  const SHARED = sourceFiles("src/shared", [".ts", ".tsx", ".astro"]);
  /** Folders whose code knows nothing but what it is given. */
  const GIVEN = ["shared", "units", "tables", "analysis", "malting", "findings", "figures", "bodies", "styles"];
  /** The one way in, and the file that puts together what it lets through; of the report it takes types alone. */
  const PROJECTION = "src/shared/projection.ts";
  const JOINS = "src/shared/shareable.ts";
  const OUTSIDE: Readonly<Record<string, readonly string[]>> = {
    "src/shared/drawingDocument.ts": ["jsdom"],
    "src/shared/layouts/CustomersPage.astro": ["node:crypto"],
    "src/shared/qrPath.ts": ["uqr"],
  };

  const strays = ({ path, imports }: Pick<SourceFile, "path" | "imports">): string[] =>
    imports.flatMap(({ specifier, typeOnly, target }) => {
      if (target === null) {
        const allowed = /^preact(?:$|\/|-render-to-string$)/.test(specifier) || OUTSIDE[path]?.includes(specifier);
        return allowed ? [] : [`${path} imports ${specifier}`];
      }
      if (GIVEN.includes(folderOf(target))) return [];
      const bySorting = path === PROJECTION && (typeOnly || target === "src/report/targetRow.ts");
      return bySorting || (path === JOINS && typeOnly) ? [] : [`${path} imports ${target}`];
    });

  it("reaches the house's logs by its projection and by nothing else", () => {
    expect(SHARED.length).toBeGreaterThan(20);
    expect(SHARED.flatMap(strays)).toEqual([]);
  });

  it("catches a page that reaches past it: a test of the test", () => {
    const page = (target: string) => ({
      path: "src/shared/pages/x.astro",
      imports: [{ specifier: "", typeOnly: true, target }],
    });
    expect(strays(page("src/report/atBuild.ts"))).toHaveLength(1);
    expect(strays(page("src/engine/node.ts"))).toHaveLength(1);
    expect(strays(page("src/shared/projection.ts"))).toHaveLength(0);
  });

  it("carries along no file of report, engine or client, however far away", () => {
    const all = new Map([...CODE, ...SHARED].map((file) => [file.path, file]));
    const reached = new Set<string>();
    const visit = (path: string): void => {
      if (reached.has(path)) return;
      reached.add(path);
      for (const { target, typeOnly } of all.get(path)?.imports ?? []) if (target !== null && !typeOnly) visit(target);
    };
    for (const { path } of SHARED) visit(path);
    const far = [...reached].filter((path) =>
      ["report", "engine", "client", "components", "pages"].includes(folderOf(path)),
    );
    expect(far).toEqual(["src/report/targetRow.ts"]);
  });
});

describe("every source file", () => {
  const ours = [...CODE, ...sourceFiles("scripts", [".ts"])];

  it("holds one concept: at most 250 lines", () => {
    // advanceWidths.ts is a measured table, not a text that anyone reads.
    const long = ours.filter(({ path, text }) => !path.endsWith("advanceWidths.ts") && text.split("\n").length > 251);
    expect(long.map(({ path, text }) => `${path}: ${text.split("\n").length} lines`)).toEqual([]);
  });

  it("exports by name and passes nothing on as a barrel", () => {
    const faults = ours.filter(
      ({ path, text }) =>
        /^export default\b/m.test(text) || /^export \*/m.test(text) || /\/(index|utils?)\.tsx?$/.test(path),
    );
    expect(faults.map(({ path }) => path)).toEqual([]);
  });

  it("draws no statistics with Plot: no fitting, binning or averaging marks", () => {
    const faults = CODE.filter(
      ({ path, text }) =>
        folderOf(path) === "figures" && /Plot\.(linearRegression|bin|group|hexbin|density|window|bollinger)/.test(text),
    );
    expect(faults.map(({ path }) => path)).toEqual([]);
  });
});

describe("every test", () => {
  it("uses the relative and absolute matchers, never the digits matcher", () => {
    const banned = ["toBe", "CloseTo("].join("");
    const faults = sourceFiles("tests", [".ts", ".tsx"]).filter(({ text }) => text.includes(banned));
    expect(faults.map(({ path }) => path)).toEqual([]);
  });
});
