/**
 * Sealing: AES-256-GCM (NIST SP 800-38D) under a key from a passphrase by PBKDF2-HMAC-SHA256 (RFC 8018). Web Crypto does
 * both, here and in the browser that opens the page; `sealed/opener.js` is the other end.
 */

/** Rounds that a guesser must pay for each guess: OWASP's password storage cheat sheet asks for 600,000 or more. */
export const PBKDF2_ROUNDS = 600_000;
const SALT_BYTES = 16;
/**
 * SP 800-38D, sections 8.2.2 and 8.3: 96 random bits, fresh for each page; one key may so seal 2 to the power of 32 texts, and
 * here it seals one customer's pages of one share.
 */
const IV_BYTES = 12;

/** What a sealed page carries. Binary parts in base64. */
export interface SealedText {
  readonly version: 1;
  readonly rounds: number;
  /** What the page is, so that a seal cannot be moved to another unseen. */
  readonly page: string;
  readonly salt: string;
  readonly iv: string;
  readonly text: string;
}

/** What one customer's pages of one share are sealed with: deriving it is slow on purpose, so that it is done once for all of them. */
export interface Seal {
  readonly salt: Bytes;
  /** 32 bytes. */
  readonly key: Bytes;
}

type Bytes = Uint8Array<ArrayBuffer>;

/** Key material of `bits` bits from a passphrase, PBKDF2 with HMAC-SHA-256. */
export async function stretchPassphrase(passphrase: Bytes, salt: Bytes, rounds: number, bits: number): Promise<Bytes> {
  const material = await crypto.subtle.importKey("raw", passphrase, "PBKDF2", false, ["deriveBits"]);
  const derived = await crypto.subtle.deriveBits(
    { name: "PBKDF2", hash: "SHA-256", salt, iterations: rounds },
    material,
    bits,
  );
  return new Uint8Array(derived);
}

/** AES-256-GCM: the ciphertext with its 128-bit tag at the end. @param key 32 bytes @param iv 12 bytes */
export async function encryptGcm(key: Bytes, iv: Bytes, plain: Bytes, additional: Bytes): Promise<Bytes> {
  const aes = await crypto.subtle.importKey("raw", key, "AES-GCM", false, ["encrypt"]);
  const options = { name: "AES-GCM", iv, additionalData: additional, tagLength: 128 };
  return new Uint8Array(await crypto.subtle.encrypt(options, aes, plain));
}

const base64 = (bytes: Bytes): string => Buffer.from(bytes).toString("base64");

/** As it is typed, said or pasted: any case, any spaces or hyphens between the words. */
export const plainPassphrase = (passphrase: string): string =>
  passphrase
    .normalize("NFKC")
    .toLowerCase()
    .match(/[a-z]+/g)
    ?.join(" ") ?? "";

/** The bytes that the seal vouches for besides the text. */
export const sealedHeader = ({ version, rounds, page }: Pick<SealedText, "version" | "rounds" | "page">): string =>
  `piecebook sealed page ${version}\n${rounds}\n${page}`;

/**
 * The key of a passphrase under a fresh salt, for every page of one customer at one share.
 *
 * @throws {RangeError} for a passphrase without a word
 */
export async function makeSeal(passphrase: string): Promise<Seal> {
  const words = plainPassphrase(passphrase);
  if (words === "") throw new RangeError("makeSeal requires a passphrase of words; got none");
  const salt = crypto.getRandomValues(new Uint8Array(SALT_BYTES));
  return { salt, key: await stretchPassphrase(new TextEncoder().encode(words), salt, PBKDF2_ROUNDS, 256) };
}

/** Seals a text with a fresh initialisation vector. @param page what the page is called; no two under one seal alike */
export async function sealText(text: string, { salt, key }: Seal, page: string): Promise<SealedText> {
  const encoder = new TextEncoder();
  const iv = crypto.getRandomValues(new Uint8Array(IV_BYTES));
  const head = { version: 1, rounds: PBKDF2_ROUNDS, page } as const;
  const sealed = await encryptGcm(key, iv, encoder.encode(text), encoder.encode(sealedHeader(head)));
  return { ...head, salt: base64(salt), iv: base64(iv), text: base64(sealed) };
}
