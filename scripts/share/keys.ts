import { createHmac, randomBytes } from "node:crypto";

/** 18 bytes are 144 bits and 24 characters without padding; a first letter costs less than half a bit of them. */
const KEY_BYTES = 18;
const REF_LENGTH = 16;

/**
 * A new random name for a customer's folder, base64url (RFC 4648, section 5), more than 128 bits. It begins with a letter: a
 * spreadsheet takes a cell that begins with a hyphen for a formula.
 */
export function newKey(): string {
  for (;;) {
    const key = randomBytes(KEY_BYTES).toString("base64url");
    if (/^[A-Za-z]/.test(key)) return key;
  }
}

/** Whether a text can be such a key: base64url of at least 128 bits, safe as a folder's name and as a spreadsheet's cell. */
export const isKey = (text: string): boolean => /^[A-Za-z][A-Za-z0-9_-]{21,63}$/.test(text);

/**
 * The folder of a batch inside a customer's: 96 bits of HMAC-SHA256 of the run under the customer's key. It is the same at
 * every share, differs from customer to customer, and says nothing of the run.
 */
export function batchRef(key: string, run: string): string {
  return createHmac("sha256", key).update(run).digest("base64url").slice(0, REF_LENGTH);
}
