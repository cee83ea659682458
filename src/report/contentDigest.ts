/**
 * Sixteen hexadecimal digits that change when the bytes do, for file names: FNV-1a, 64 bits. It tells versions of a file
 * apart for a cache; it is no seal, since anyone can make bytes to fit.
 *
 * Own lines, because the browser's digests exist on secure origins only and the same name must come out on any.
 *
 * Source: the FNV non-cryptographic hash algorithm, offset basis cbf29ce484222325, prime 100000001b3 (from memory; its
 * published test strings are in the tests).
 */
export function contentDigest(bytes: Uint8Array): string {
  let high = 0xcbf29ce4;
  let low = 0x84222325;
  for (let i = 0; i < bytes.length; i++) {
    low = (low ^ (bytes[i] as number)) >>> 0;
    // Times 2⁴⁰ + 0x1b3, modulo 2⁶⁴, in halves of 32 bits: every product stays below 2⁵³.
    const product = low * 0x1b3;
    high = (high * 0x1b3 + Math.floor(product / 2 ** 32) + low * 0x100) % 2 ** 32;
    low = product % 2 ** 32;
  }
  return high.toString(16).padStart(8, "0") + low.toString(16).padStart(8, "0");
}
