import { expect, test } from "vitest";
import { contentDigest } from "../../src/report/contentDigest.ts";

/** Test strings of the FNV-1a hash, 64 bits, as its authors publish them (from memory). */
test.for([
  ["", "cbf29ce484222325"],
  ["a", "af63dc4c8601ec8c"],
  ["foobar", "85944171f73967e8"],
] as const)("contentDigest of %j is the published one", ([text, digest]) => {
  expect(contentDigest(new TextEncoder().encode(text))).toBe(digest);
});

test("contentDigest is FNV-1a over any bytes, as plain 64-bit arithmetic gives it", () => {
  const bytes = Uint8Array.from({ length: 1000 }, (_, i) => (i * i * 7 + 3) % 256);
  let expected = 0xcbf29ce484222325n;
  for (const byte of bytes) expected = ((expected ^ BigInt(byte)) * 0x100000001b3n) % 2n ** 64n;
  expect(contentDigest(bytes)).toBe(expected.toString(16).padStart(16, "0"));
});
