import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { plainPassphrase } from "../../src/shared/seal.ts";

const HEAD = "# Passphrases of sealed pages, one customer a line. Keep this file to yourself.";

/**
 * The file in which the owner chose to keep passphrases: a line a customer, the customer's short name, a tab, the words.
 *
 * @throws {RangeError} for a line that is neither that nor a comment
 */
export function readPassphrases(path: string): ReadonlyMap<string, string> {
  if (!existsSync(path)) return new Map();
  const lines = readFileSync(path, "utf8").split(/\r\n|\r|\n/);
  return new Map(
    lines.flatMap((line, at) => {
      if (line.trim() === "" || line.startsWith("#")) return [];
      const [customer = "", words = ""] = line.split("\t");
      if (customer === "" || plainPassphrase(words) === "") {
        throw new RangeError(`${path}, line ${at + 1}: a customer, a tab and the words are wanted`);
      }
      return [[customer, words.trim()] as const];
    }),
  );
}

/** Writes them back, for the owner's eyes alone where the system knows of such a thing. */
export function writePassphrases(path: string, passphrases: ReadonlyMap<string, string>): void {
  const lines = [...passphrases].map(([customer, words]) => `${customer}\t${words}`);
  writeFileSync(path, `${[HEAD, ...lines].join("\n")}\n`, { mode: 0o600 });
}
