import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { chooseSeals, type SealOptions } from "../../scripts/share/chooseSeals.ts";
import { newPassphrase, PASSPHRASE_WORDS } from "../../scripts/share/passphrase.ts";
import { readPassphrases, writePassphrases } from "../../scripts/share/passphraseFile.ts";
import { WORDS } from "../../scripts/share/wordList.ts";
import type { SharedBefore } from "../../src/report/sharing/sharedBefore.ts";
import type { CustomerRow } from "../../src/report/sharing/sharingSources.ts";
import {
  makeSeal,
  PBKDF2_ROUNDS,
  plainPassphrase,
  type SealedText,
  sealedHeader,
  sealText,
} from "../../src/shared/seal.ts";

const folder = mkdtempSync(join(tmpdir(), "seals-"));
afterAll(() => rmSync(folder, { recursive: true }));

const row = (customer: string, share = true): CustomerRow => ({
  customer,
  name: null,
  share,
  linkKey: null,
  note: null,
  line: 2,
});
const none: SealOptions = { all: false, seal: new Set(), open: new Set(), known: new Map(), before: null };
const before: SharedBefore = {
  version: 1,
  on: "2026-10-31",
  address: null,
  customers: { A: { since: "2026-10-31", sealed: true, batches: {} } },
  inQuestion: [],
  changes: [],
};

/** One letter added, dropped or changed. */
function isNear(a: string, b: string): boolean {
  const [short, long] = a.length <= b.length ? [a, b] : [b, a];
  if (long.length - short.length > 1) return false;
  let same = 0;
  while (same < short.length && short[same] === long[same]) same++;
  return short.slice(same + (long.length === short.length ? 1 : 0)) === long.slice(same + 1);
}

describe("the list of words", () => {
  it("holds 1,024, so that eight of them are 80 bits", () => {
    expect(new Set(WORDS).size).toBe(1024);
    expect(PASSPHRASE_WORDS * Math.log2(WORDS.length)).toBeGreaterThanOrEqual(80);
  });

  it("holds plain words, no two a letter apart", () => {
    for (const word of WORDS) expect(word).toMatch(/^[a-z]{3,9}$/);
    const near = WORDS.flatMap((word, at) =>
      WORDS.slice(at + 1)
        .filter((other) => isNear(word, other))
        .map((other) => `${word} ${other}`),
    );
    expect(near).toEqual([]);
  });
});

describe("newPassphrase()", () => {
  it("draws every word of the list, and no passphrase twice", () => {
    const drawn = Array.from({ length: 3000 }, newPassphrase);
    expect(new Set(drawn).size).toBe(drawn.length);
    // 24,000 draws leave a given word out with a chance of e to the power of −23.
    expect(new Set(drawn.flatMap((words) => words.split(" ")))).toEqual(new Set(WORDS));
  });
});

describe("plainPassphrase(text)", () => {
  it.each(["Apple  bread-CAT\n", " apple, bread, cat. ", "apple\u00a0bread\tcat", "Apple–Bread–Cat"])(
    "reads %j as it is meant",
    (typed) => {
      expect(plainPassphrase(typed)).toBe("apple bread cat");
    },
  );
});

/** Opens a seal by Web Crypto, written apart from the code that seals. */
async function opened(sealed: SealedText, words: string): Promise<string> {
  const bytes = (base64: string) => new Uint8Array(Buffer.from(base64, "base64"));
  const material = await crypto.subtle.importKey("raw", new TextEncoder().encode(words), "PBKDF2", false, [
    "deriveKey",
  ]);
  const key = await crypto.subtle.deriveKey(
    { name: "PBKDF2", hash: "SHA-256", salt: bytes(sealed.salt), iterations: sealed.rounds },
    material,
    { name: "AES-GCM", length: 256 },
    false,
    ["decrypt"],
  );
  const additionalData = new TextEncoder().encode(sealedHeader(sealed));
  return new TextDecoder().decode(
    await crypto.subtle.decrypt({ name: "AES-GCM", iv: bytes(sealed.iv), additionalData }, key, bytes(sealed.text)),
  );
}

describe("makeSeal(passphrase) and sealText(text, seal, page)", () => {
  it("give a page that opens with its passphrase alone, and only as the page that it was", async () => {
    const sealed = await sealText("a page\u00a0– 麦", await makeSeal("Apple bread CAT"), "deliveries");
    expect(sealed.rounds).toBe(PBKDF2_ROUNDS);
    expect(await opened(sealed, "apple bread cat")).toBe("a page\u00a0– 麦");
    await expect(opened(sealed, "apple bread dog")).rejects.toThrow();
    await expect(opened({ ...sealed, page: "other" }, "apple bread cat")).rejects.toThrow();
    await expect(opened({ ...sealed, rounds: 1 }, "apple bread cat")).rejects.toThrow();
  });

  it("take a fresh salt for each seal, and a fresh initialisation vector for each page under it", async () => {
    const seals = [await makeSeal("apple"), await makeSeal("apple")] as const;
    expect(Buffer.from(seals[0].salt)).not.toEqual(Buffer.from(seals[1].salt));
    expect(Buffer.from(seals[0].key)).not.toEqual(Buffer.from(seals[1].key));
    const pages = await Promise.all(Array.from({ length: 50 }, (_, at) => sealText("same", seals[0], `p${at}`)));
    expect(new Set(pages.map(({ salt }) => salt)).size).toBe(1);
    expect(new Set(pages.map(({ iv }) => iv)).size).toBe(50);
    expect(new Set(pages.map(({ text }) => text)).size).toBe(50);
    expect([pages[0]?.salt, pages[0]?.iv].map((part) => Buffer.from(part ?? "", "base64").length)).toEqual([16, 12]);
    expect(await opened(pages[49] as SealedText, "apple")).toBe("same");
  });

  it("refuse a passphrase without a word", async () => {
    await expect(makeSeal(" 123 ")).rejects.toThrow(RangeError);
  });
});

describe("chooseSeals(customers, options)", () => {
  it("seals those asked for, all where all are, and nobody else", () => {
    const customers = [row("A"), row("B"), row("C", false)];
    expect([...chooseSeals(customers, none).passphrases.keys()]).toEqual([]);
    expect([...chooseSeals(customers, { ...none, seal: new Set(["B"]) }).passphrases.keys()]).toEqual(["B"]);
    expect([...chooseSeals(customers, { ...none, all: true, open: new Set(["B"]) }).passphrases.keys()]).toEqual(["A"]);
  });

  it("takes the passphrase that the owner kept, and says which it made", () => {
    const known = new Map([["A", "kept words"]]);
    const { passphrases, made } = chooseSeals([row("A"), row("B")], { ...none, all: true, known });
    expect(passphrases.get("A")).toBe("kept words");
    expect([...made]).toEqual(["B"]);
  });

  it("does not leave open what was sealed last time unless it is told to", () => {
    expect(() => chooseSeals([row("A")], { ...none, before })).toThrow("sealed last time");
    expect(chooseSeals([row("A")], { ...none, before, open: new Set(["A"]) }).passphrases.size).toBe(0);
  });

  it("refuses a customer who has no pages, or who would be both", () => {
    expect(() => chooseSeals([row("A", false)], { ...none, seal: new Set(["A"]) })).toThrow("no such customer");
    expect(() => chooseSeals([row("A")], { ...none, seal: new Set(["A"]), open: new Set(["A"]) })).toThrow("both");
  });
});

describe("the file of passphrases", () => {
  it("comes back as it was written, for its owner's eyes alone", () => {
    const path = join(folder, "kept.txt");
    const kept = new Map([["C 1", "apple bread"]]);
    writePassphrases(path, kept);
    expect(readPassphrases(path)).toEqual(kept);
    if (process.platform !== "win32") expect(statSync(path).mode & 0o077).toBe(0);
  });

  it("is empty where it is not there, and refuses a line it cannot read", () => {
    expect(readPassphrases(join(folder, "none.txt")).size).toBe(0);
    writeFileSync(join(folder, "bad.txt"), "# fine\nA without a tab\n");
    expect(() => readPassphrases(join(folder, "bad.txt"))).toThrow("line 2");
  });
});
