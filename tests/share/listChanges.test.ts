import { describe, expect, it } from "vitest";
import { listChanges } from "../../scripts/share/lastShare.ts";
import type { CustomerBefore, SharedBefore } from "../../src/report/sharing/sharedBefore.ts";

const shown = (batches: CustomerBefore["batches"]): CustomerBefore => ({ since: "2026-01-01", sealed: false, batches });
const record = (customers: SharedBefore["customers"]): SharedBefore => ({
  version: 1,
  on: "2026-10-31",
  address: null,
  customers,
  inQuestion: [],
  changes: [],
});

describe("listChanges(before, now)", () => {
  it("calls everything added at the first share, and nothing at one that shows the same", () => {
    const customers = { A: shown({ "24-1": { Colour: "3.5 EBC" } }) };
    expect(listChanges(null, { customers })).toEqual([{ customer: "A", run: "24-1", kind: "added", figures: [] }]);
    expect(listChanges(record(customers), { customers })).toEqual([]);
  });

  it("names each figure that was seen and is otherwise, with what it was", () => {
    const before = record({ A: shown({ "24-1": { Colour: "3.5 EBC", Friability: "88 %" } }) });
    const customers = { A: shown({ "24-1": { Colour: "3.6 EBC", "pH of the wort": "5.9" } }) };
    expect(listChanges(before, { customers })).toEqual([
      {
        customer: "A",
        run: "24-1",
        kind: "altered",
        figures: [
          { name: "Colour", was: "3.5 EBC", is: "3.6 EBC" },
          { name: "Friability", was: "88 %", is: "not shown" },
          { name: "pH of the wort", was: "not shown", is: "5.9" },
        ],
      },
    ]);
  });

  it("names what is no longer shown, a whole customer's pages included", () => {
    const before = record({ A: shown({ "24-1": {}, "24-2": {} }), B: shown({ "24-3": {} }) });
    const changes = listChanges(before, { customers: { A: shown({ "24-2": {} }) } });
    expect(changes.map(({ customer, run, kind }) => `${customer} ${run} ${kind}`)).toEqual([
      "A 24-1 taken-back",
      "B 24-3 taken-back",
    ]);
  });
});
