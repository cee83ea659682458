import { describe, expect, it } from "vitest";
import { latestKept } from "../../src/client/latestKept.ts";

describe("latestKept(most)", () => {
  it("keeps the latest, and lets the oldest go", () => {
    const kept = latestKept<number>(2);
    for (const [i, key] of ["a", "b", "c"].entries()) expect(kept.keep(key, i)).toBe(i);
    expect([kept.get("a"), kept.get("b"), kept.get("c")]).toEqual([undefined, 1, 2]);
  });

  it("takes what is kept anew for the latest", () => {
    const kept = latestKept<number>(2);
    for (const key of ["a", "b", "a", "c"]) kept.keep(key, 0);
    expect([kept.get("a"), kept.get("b"), kept.get("c")]).toEqual([0, undefined, 0]);
  });
});
