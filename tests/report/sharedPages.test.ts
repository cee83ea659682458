import { describe, expect, it } from "vitest";
import type { SharedBefore } from "../../src/report/sharing/sharedBefore.ts";
import { parseRecord, sharedPagesOf } from "../../src/report/sharing/sharedPagesOf.ts";
import { readLogs } from "../../src/tables/readLogs.ts";
import { textFiles } from "../support/textFiles.ts";

const KEY = "abcdefghijklmnopqrstuvwx";

const { tables } = await readLogs(
  textFiles({
    "customers.csv": `customer,name,share,link_key,note\nA,Alpha Brewery,yes,${KEY},owes us\nB,,no,,\n`,
    "deliveries.csv": `\
delivery,customer,run,shipped_on,mass_kg,package_kind,package_count,product,note
D1,A,R1,2026-03-20,100,bag,4,,
D2,A,R1,2026-04-20,100,bag,4,malt,
D3,A,R2,2026-05-20,100,bag,4,rootlets,
D4,B,R2,2026-05-21,100,bag,4,malt,
`,
  }),
);

const record: SharedBefore = {
  version: 1,
  on: "2026-10-31",
  address: "https://malt.example/",
  customers: { A: { since: "2026-01-02", sealed: true, batches: { R1: { Colour: "3.5 EBC" } } } },
  inQuestion: [{ run: "R2", reasons: ["friability is below its spec"], shared: false }],
  changes: [],
};

describe("sharedPagesOf(tables, record, passes)", () => {
  const found = sharedPagesOf(tables, JSON.stringify(record), []);

  it("says who sees what and since when, and what was sent by now", () => {
    expect(found.customers).toEqual([
      {
        customer: "A",
        shares: true,
        batchesSent: 1,
        lastSentOn: Date.UTC(2026, 3, 20),
        shown: { since: "2026-01-02", sealed: true, runs: ["R1"] },
      },
      { customer: "B", shares: false, batchesSent: 1, lastSentOn: Date.UTC(2026, 4, 21), shown: null },
    ]);
    expect(found.last?.inQuestion).toEqual(record.inQuestion);
  });

  it("holds neither key, name, note nor address", () => {
    expect(JSON.stringify(found)).not.toMatch(new RegExp(`${KEY}|Alpha|owes|https`));
  });

  it("takes no record for nothing shared yet, and says where one cannot be read", () => {
    expect(sharedPagesOf(tables, null, [])).toMatchObject({ last: null, recordFault: null });
    expect(sharedPagesOf(tables, "{}", []).recordFault).toContain(".shared.json");
    expect(parseRecord("not json").recordFault).toContain(".shared.json");
  });
});
