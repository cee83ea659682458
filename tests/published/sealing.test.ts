import { describe, expect, it } from "vitest";
import { encryptGcm, stretchPassphrase } from "../../src/shared/seal.ts";

const bytes = (text: string): Uint8Array<ArrayBuffer> => new TextEncoder().encode(text);
const hex = (found: Uint8Array): string => Buffer.from(found).toString("hex");
const fromHex = (text: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(text, "hex"));

/** RFC 7914, section 11: test vectors for PBKDF2-HMAC-SHA-256. */
describe("stretchPassphrase(passphrase, salt, rounds, bits)", () => {
  it.each([
    {
      passphrase: "passwd",
      salt: "salt",
      rounds: 1,
      key: "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783",
    },
    {
      passphrase: "Password",
      salt: "NaCl",
      rounds: 80_000,
      key: "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d",
    },
  ])("gives RFC 7914's key after $rounds rounds", async ({ passphrase, salt, rounds, key }) => {
    expect(hex(await stretchPassphrase(bytes(passphrase), bytes(salt), rounds, 512))).toBe(key);
  });
});

/**
 * D. McGrew and J. Viega, The Galois/Counter Mode of Operation (GCM), appendix B: cases 13 and 14 (key of 256 zero bits,
 * zero IV) and 16 (with additional data). Cases 13 and 16 from memory of the paper.
 */
describe("encryptGcm(key, iv, plain, additional)", () => {
  const zeroKey = new Uint8Array(32);
  const zeroIv = new Uint8Array(12);

  it("gives the paper's tag of no text, case 13", async () => {
    const sealed = await encryptGcm(zeroKey, zeroIv, new Uint8Array(0), new Uint8Array(0));
    expect(hex(sealed)).toBe("530f8afbc74536b9a963b4f1c4cb738b");
  });

  it("gives the paper's text and tag of sixteen zeros, case 14", async () => {
    const sealed = await encryptGcm(zeroKey, zeroIv, new Uint8Array(16), new Uint8Array(0));
    expect(hex(sealed)).toBe(`cea7403d4d606b6e074ec5d3baf39d18${"d0d1c8a799996bf0265b98b5d48ab919"}`);
  });

  it("vouches for additional data as the paper does, case 16", async () => {
    const sealed = await encryptGcm(
      fromHex("feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308"),
      fromHex("cafebabefacedbaddecaf888"),
      fromHex(
        "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39",
      ),
      fromHex("feedfacedeadbeeffeedfacedeadbeefabaddad2"),
    );
    expect(hex(sealed)).toBe(
      `522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662${"76fc6ece0f4e1768cddf8853bb2d551b"}`,
    );
  });
});
