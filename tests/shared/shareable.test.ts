import { beforeAll, describe, expect, it } from "vitest";
import { heldBackReasons, rowsLost, stopsSharing } from "../../scripts/share/heldBack.ts";
import { readSharingSources } from "../../src/report/sharing/readSharingSources.ts";
import type { SharingSources } from "../../src/report/sharing/sharingSources.ts";
import { passHouse, passLimits, passRun } from "../../src/shared/projection.ts";
import { type SharingChoices, shareable } from "../../src/shared/shareable.ts";
import type { Problem } from "../../src/tables/problem.ts";
import { tenRuns } from "../support/tenRuns.ts";
import { textFiles } from "../support/textFiles.ts";

const files: Readonly<Record<string, string>> = {
  ...tenRuns,
  "customers.csv": "customer,name,share,link_key,note\nA,First,yes,,secret\nB,Second,no,,\nC,Third,yes,,\n",
  "deliveries.csv": `\
delivery,customer,run,shipped_on,mass_kg,package_kind,package_count,product,note
D1,A,R01,2026-03-20,100,bag,4,,
D2,A,R02,2026-03-20,200,bag,8,malt,
D3,A,R01,2026-04-20,150,tote,1,malt,
D4,A,R03,2026-04-25,40,bulk,,rootlets,
D5,B,R04,2026-04-25,40,bag,2,malt,
D6,C,R05,2026-04-26,40,bag,2,malt,
D7,A,R06,2026-04-27,40,bag,2,malt,
`,
  "lab.csv": `\
run,tested_on,laboratory,method_set,moisture_pct,extract_fine_dry_pct,colour_srm
R01,2026-02-01,A laboratory,EBC,4.4,81.5,2
R01,2026-02-20,A laboratory,EBC,,82,2.6
R04,2026-02-20,A laboratory,EBC,,70,
`,
  "targets.csv": `\
variety,measure,low,target,high
any,final_moisture_pct,4,4.5,4.7
any,colour_srm,1,,2.5
barley,extract_fine_dry_pct,80,,
wheat,extract_fine_dry_pct,83,,
any,dry_yield_pct,99,,
`,
};

let sources: SharingSources;
beforeAll(async () => {
  sources = await readSharingSources(textFiles(files));
});

const choices: SharingChoices = {
  keyOf: ({ customer }) => `key-${customer}`,
  sealOf: () => null,
  refOf: (key, run) => `${key}~${run.length}${run.at(-1)}`,
  heldBack: new Set(),
};

describe("shareable(sources, choices)", () => {
  it("gives pages to those who share, with nothing of the others", () => {
    const customers = shareable(sources, choices);
    expect(customers.map(({ key }) => key)).toEqual(["key-A", "key-C"]);
    expect(JSON.stringify(customers)).not.toMatch(/First|Third|secret|D1|R0\d|A laboratory|P1|"K1"|L1/);
  });

  it("lists deliveries newest first, and leads from malt to its batch's page", () => {
    const [first] = shareable(sources, choices);
    expect(first?.deliveries.map(({ bagCode, product, leads }) => [bagCode, product, leads])).toEqual([
      [null, "malt", "page"],
      ["A-03", "rootlets", "no-page"],
      ["A-01", "malt", "page"],
      ["A-02", "malt", "page"],
      ["A-01", "malt", "page"],
    ]);
    expect(first?.batches.map(({ run, deliveries }) => [run.bagCode, deliveries.length])).toEqual([
      ["A-01", 2],
      ["A-02", 1],
      [null, 1],
    ]);
  });

  it("gives a batch all its certificates, newest first", () => {
    const batch = shareable(sources, choices)[0]?.batches[0];
    expect(batch?.certificates.map(({ values }) => values.extract_fine_dry_pct)).toEqual([82, 81.5]);
  });

  it("compares a batch with those delivered before it, of its variety, and never with later ones", () => {
    const [one, two] = shareable(sources, choices)[0]?.batches ?? [];
    expect(one?.former).toEqual([]);
    const moisture = two?.former.find(({ measure }) => measure === "final_moisture_pct");
    expect(moisture?.former).toEqual([4.5]);
    expect(moisture?.next).toBeNull();
  });

  it("keeps the delivery of a batch that is held back, and nothing else of it", () => {
    const [first] = shareable(sources, { ...choices, heldBack: new Set(["R01"]) });
    expect(first?.batches.map(({ run }) => run.bagCode)).toEqual(["A-02", null]);
    expect(first?.deliveries.filter(({ leads }) => leads === "held-back").map(({ bagCode }) => bagCode)).toEqual([
      "A-01",
      "A-01",
    ]);
    expect(first?.batches[0]?.former).toEqual([]);
  });
});

describe("passRun(run, house)", () => {
  it("lets a grower through only where the house says so", () => {
    const run = sources.runs.find((row) => row.run === "R01");
    if (run === undefined) throw new Error("no R01");
    const shared = sources.house.shared;
    expect(passRun(run, { shared: { ...shared, showGrowers: false } }).grower).toBeNull();
    expect(passRun(run, { shared: { ...shared, showGrowers: true } }).grower).toBe("First Grower");
  });

  it("takes out what would turn the text around it, and leaves the letters", () => {
    const { house } = sources;
    const turned = passHouse({
      ...house,
      name: "\u202eMaltings\u2066 שלום\u0000\n",
      shared: { ...house.shared, contact: "<b>&\"'" },
    });
    expect(turned.name).toBe("Maltings שלום");
    expect(turned.contact).toBe("<b>&\"'");
  });
});

describe("passLimits(targets, measure, run)", () => {
  it("finds limits in whichever unit targets.csv has them: 1 to 2.5 SRM are 1.97 to 4.925 EBC", () => {
    const limits = passLimits(sources.targets, "colour_ebc", { variety: null, grain: "barley" });
    expect(limits?.low).toAgreeWithin(1.97, 1e-12);
    expect(limits?.high).toAgreeWithin(4.925, 1e-12);
    expect(limits?.target).toBeNull();
  });

  it("takes the nearest, and none where there is none", () => {
    expect(passLimits(sources.targets, "extract_fine_dry_pct", { variety: "Sampler", grain: "wheat" })?.low).toBe(83);
    expect(passLimits(sources.targets, "ph", { variety: "Sampler", grain: "wheat" })).toBeNull();
  });
});

describe("heldBackReasons(sources)", () => {
  it("names figures outside the spec, of batches that someone who shares was sent, and says which and how", () => {
    const reasons = heldBackReasons(sources);
    expect(reasons.get("R01")).toEqual(["colour of 5.1\u00a0EBC is above its spec"]);
    expect(reasons.get("R05")).toEqual(["final moisture of 4.8\u00a0% is above its spec"]);
    // R04's extract is far below, but nobody who shares had any of it; R02's yield is the house's own business.
    expect(reasons.has("R04")).toBe(false);
    expect(reasons.has("R02")).toBe(false);
  });

  it("holds a batch back for a fault in what would be shown, and not for one in what would not", async () => {
    const spoilt = (from: string, to: string) =>
      readSharingSources(textFiles({ ...files, "kilning.csv": tenRuns["kilning.csv"]?.replace(from, to) ?? "" }));
    const shown = await spoilt("2026-01-18 21:00,2026-01-19 08:30", "2026-01-18 21:00,2026-13-19 08:30");
    expect(heldBackReasons(shown).get("R02")?.join()).toContain("kilning.csv, line 3, cure_started_at");
    const unseen = await spoilt(",735,,,,48,80,,430", ",7350000,,,,48,80,,430");
    expect(unseen.problems.some(({ column }) => column === "green_load_kg")).toBe(true);
    expect(heldBackReasons(unseen).has("R02")).toBe(false);
  });
});

describe("heldBackReasons(sources) of faults that name no run", () => {
  const spoilt = async (path: string, from: string, to: string) => {
    const text = files[path] ?? "";
    expect(text).toContain(from);
    return heldBackReasons(await readSharingSources(textFiles({ ...files, [path]: text.replace(from, to) })));
  };
  /** By steeping.csv of the ten runs: R02 filled a second tank from another lot. */
  const MADE_OF_L1 = ["R01", "R02", "R04", "R06", "R07", "R10"];

  it("holds back every batch of a lot whose grain is not as it was logged, and no other for it", async () => {
    const [header = "", row = ""] = (files["grain-lots.csv"] ?? "").split("\n");
    const cells = row.split(",");
    expect(cells[0]).toBe("L1");
    const year = header.split(",").indexOf("crop_year");
    const reasons = await spoilt("grain-lots.csv", row, cells.with(year, "2o25").join(","));
    for (const { run } of sources.runs) {
      const said = reasons.get(run)?.join() ?? "";
      if (MADE_OF_L1.includes(run)) expect(said, run).toContain("grain-lots.csv, line 2, crop_year");
      else expect(said, run).not.toContain("grain-lots.csv");
    }
  });

  it("holds back a batch whose lot is not known, since its grain is not", async () => {
    const line = (files["steeping.csv"] ?? "").split("\n").find((row) => row.startsWith("R02,")) ?? "";
    const reasons = await spoilt("steeping.csv", line, line.replace(",L1,", ",NO-SUCH-LOT,"));
    expect(reasons.get("R02")?.join()).toContain("no lot NO-SUCH-LOT");
  });

  it("holds back what a spec that cannot be read is for, and nothing for the house's own aims", async () => {
    const wheat = await spoilt("targets.csv", "wheat,extract_fine_dry_pct,83,,", "wheat,extract_fine_dry_pct,8x3,,");
    for (const { run, grain } of sources.runs) {
      const said = wheat.get(run)?.join() ?? "";
      if (grain === "wheat") expect(said, run).toContain("targets.csv, line 5");
      else expect(said, run).not.toContain("targets.csv");
    }
    const own = await spoilt("targets.csv", "any,dry_yield_pct,99,,", "any,dry_yield_pct,9x9,,");
    expect([...own.values()].flat().join()).not.toContain("targets.csv");
  });

  it("holds back batches whose faults are too many of a kind to be listed one by one", async () => {
    const many = Array.from({ length: 130 }, (_, at) => `X${at},2026-01-01,A laboratory,EBC,4.4,8x1,`).join("\n");
    const lab = `run,tested_on,laboratory,method_set,moisture_pct,extract_fine_dry_pct,colour_srm\n${many}\nR02,2026-02-01,A laboratory,EBC,4.4,8x1,\n`;
    const reasons = heldBackReasons(await readSharingSources(textFiles({ ...files, "lab.csv": lab })));
    expect(reasons.get("R02")?.join()).toContain("lab.csv");
    expect(reasons.has("R07")).toBe(false);
  });
});

describe("a file that columns.toml reads", () => {
  const fault = (file: string, column: string, effect: Problem["effect"], run: string | null = "R02"): Problem => ({
    file,
    line: 4,
    column,
    value: "x",
    rule: "not-a-number",
    message: "It is not a number.",
    hint: "Mend it.",
    effect,
    run,
  });

  it("holds a batch back for a value that was blanked under a heading of its own, wherever the file lies", () => {
    for (const file of ["Kiln book.csv", "kilning.csv"]) {
      const reasons = heldBackReasons({ ...sources, problems: [fault(file, "Feuchte", "value-blanked")] });
      expect(reasons.get("R02")?.join()).toContain(`${file}, line 4, Feuchte`);
    }
  });

  it("stops a share where it, or columns.toml, cannot be read, and counts rows that were lost", () => {
    const broken = [fault("Kiln book.csv", "x", "file-set-aside"), fault("columns.toml", "x", "file-set-aside")];
    expect(stopsSharing(broken)).toHaveLength(2);
    expect(rowsLost([fault("Deliveries 2026.csv", "x", "row-set-aside", null)])).toHaveLength(1);
  });
});

describe("stopsSharing(problems) and rowsLost(problems)", () => {
  it("stop at a file that cannot be read, and name rows that may be missing", async () => {
    const broken = await readSharingSources(
      textFiles({
        ...files,
        "lab.csv": "laboratory,tested_on\nx,2026-01-01\n",
        "deliveries.csv": `${files["deliveries.csv"]}D9,A,,2026-04-27,40,bag,2,malt,\n`,
      }),
    );
    expect(stopsSharing(broken.problems)).toHaveLength(1);
    expect(stopsSharing(broken.problems)[0]).toContain("lab.csv");
    expect(rowsLost(broken.problems)[0]).toContain("deliveries.csv, line 9");
    expect(stopsSharing(sources.problems)).toEqual([]);
    expect(rowsLost(sources.problems)).toEqual([]);
  });
});
