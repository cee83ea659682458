import { describe, expect, it } from "vitest";
import { amongFormer, type ComparedBatch, FEWEST_FOR_SPREAD } from "../../src/shared/formerBatches.ts";

const batch = (
  moisture: number | null,
  extract: number | null,
  changes: { variety?: string; method?: string } = {},
): ComparedBatch => ({
  run: { variety: changes.variety ?? "Reed", finalMoisturePercent: moisture },
  certificates:
    extract === null
      ? []
      : [{ testedOn: 0, methodSet: changes.method ?? "EBC", values: { extract_fine_dry_pct: extract } }],
});

describe("amongFormer(batch, former)", () => {
  it("says nothing of a first batch, or beside other varieties only", () => {
    expect(amongFormer(batch(4.4, 81), [])).toEqual([]);
    expect(amongFormer(batch(4.4, 81), [batch(4.5, 80, { variety: "Sedge" })])).toEqual([]);
  });

  it("never puts results of different methods together", () => {
    const found = amongFormer(batch(4.4, 81), [batch(4.5, 80), batch(4.6, 79, { method: "ASBC" })]);
    expect(found.find(({ measure }) => measure === "extract_fine_dry_pct")?.former).toEqual([80]);
    expect(found.find(({ measure }) => measure === "final_moisture_pct")?.former).toEqual([4.5, 4.6]);
  });

  it("says a spread to expect from five batches on, this one among them, and not before", () => {
    const former = Array.from({ length: FEWEST_FOR_SPREAD - 1 }, (_, i) => batch(4.2 + i / 10, null));
    const [moisture] = amongFormer(batch(4.6, null), former);
    expect(moisture?.next?.estimate).toAgreeWithin(4.4, 1e-12);
    expect(moisture?.next?.low).toBeLessThan(4.2);
    expect(amongFormer(batch(4.6, null), former.slice(1))[0]?.next).toBeNull();
  });

  it("keeps a measure that this batch was not tested for, so that the spread can still be seen", () => {
    const [extract] = amongFormer(batch(null, null), [batch(null, 80), batch(null, 81)]);
    expect(extract).toMatchObject({ measure: "extract_fine_dry_pct", value: null, former: [80, 81] });
  });
});
