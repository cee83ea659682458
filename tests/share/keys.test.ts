import { describe, expect, it } from "vitest";
import { chooseKeys } from "../../scripts/share/chooseKeys.ts";
import { batchRef, isKey, newKey } from "../../scripts/share/keys.ts";
import type { CustomerRow } from "../../src/report/sharing/sharingSources.ts";

const row = (customer: string, changes: Partial<CustomerRow> = {}): CustomerRow => ({
  customer,
  name: null,
  share: true,
  linkKey: null,
  note: null,
  line: 2,
  ...changes,
});

describe("newKey()", () => {
  const drawn = Array.from({ length: 2000 }, newKey);

  it("is base64url of more than 128 bits that a spreadsheet takes for no formula", () => {
    for (const key of drawn) expect(key).toMatch(/^[A-Za-z][A-Za-z0-9_-]{23}$/);
    // The first character is one of 52, the others of 64.
    expect(Math.log2(52) + 23 * 6).toBeGreaterThan(128);
    expect(drawn.every(isKey)).toBe(true);
  });

  it("never comes twice and uses every character", () => {
    expect(new Set(drawn).size).toBe(drawn.length);
    expect(new Set(drawn.join("")).size).toBe(64);
  });
});

describe("isKey(text)", () => {
  it.each([
    "",
    "acme",
    "-AAAAAAAAAAAAAAAAAAAAAAA",
    "../../../../../../etc/passwd",
    "a".repeat(21),
    "a b".repeat(9),
    "=1+1".repeat(6),
  ])("refuses %j", (text) => {
    expect(isKey(text)).toBe(false);
  });
});

describe("batchRef(key, run)", () => {
  it("is the same each time, differs by key and by run, and is safe in a path whatever the run is called", () => {
    const runs = ["24-001", "24-002", "../..", "a/b", "\u202eevil", "x".repeat(500), ""];
    const refs = ["K".repeat(24), "L".repeat(24)].flatMap((key) => runs.map((run) => batchRef(key, run)));
    expect(new Set(refs).size).toBe(refs.length);
    expect(batchRef("K".repeat(24), "24-001")).toBe(refs[0]);
    for (const ref of refs) expect(ref).toMatch(/^[A-Za-z0-9_-]{16}$/);
  });
});

describe("chooseKeys(customers, renew)", () => {
  it("keeps a key that is there, makes one where there is none, and makes none for whoever does not share", () => {
    const key = newKey();
    const customers = [row("A", { linkKey: key, line: 2 }), row("B", { line: 3 }), row("C", { share: false, line: 4 })];
    const { keys, toWrite } = chooseKeys(customers, new Set());
    expect(keys.get("A")).toBe(key);
    expect([...keys.keys()]).toEqual(["A", "B"]);
    expect([...toWrite]).toEqual([[3, keys.get("B")]]);
  });

  it("makes a new key where the owner asks for it", () => {
    const key = newKey();
    const { keys, toWrite } = chooseKeys([row("A", { linkKey: key })], new Set(["A"]));
    expect(keys.get("A")).not.toBe(key);
    expect(toWrite.get(2)).toBe(keys.get("A"));
  });

  it("refuses a key that can be guessed, one that two share, and a new key for whoever does not share", () => {
    const key = newKey();
    expect(() => chooseKeys([row("A", { linkKey: "acme" })], new Set())).toThrow("may be guessed");
    const two = [row("A", { linkKey: key }), row("B", { linkKey: key.toUpperCase(), line: 3 })];
    expect(() => chooseKeys(two, new Set())).toThrow("A and B have the same link_key");
    expect(() => chooseKeys([row("A", { share: false })], new Set(["A"]))).toThrow("no such customer");
  });
});
