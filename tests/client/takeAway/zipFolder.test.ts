import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { type PackedPart, zipFolder } from "../../../src/client/takeAway/zipFolder.ts";

const going = new AbortController().signal;

async function* inTurn(parts: readonly PackedPart[]): AsyncGenerator<PackedPart> {
  yield* parts;
}

/** Rows that differ, so that they are not packed to nothing. */
const rows = (bytes: number): string => {
  let text = "at,air_on_c\n";
  for (let row = 0; text.length < bytes; row += 1) text += `${row},${(row * 7919) % 1000}\n`;
  return text;
};

async function unzipped(zip: Blob): Promise<Readonly<Record<string, string>>> {
  const files = unzipSync(new Uint8Array(await zip.arrayBuffer()));
  return Object.fromEntries(Object.entries(files).map(([path, bytes]) => [path, strFromU8(bytes)]));
}

describe("zipFolder(parts, signal)", () => {
  it("packs files of any length, empty ones too, so that they come out again word for word", async () => {
    const parts = [
      { path: "logs/empty.csv", text: "" },
      { path: "logs/short.csv", text: "name\nGerste für Pils – 5 °C\n" },
      { path: "logs/long.csv", text: rows(1_000_000) },
      { path: "logs/even.csv", text: "x".repeat(512 * 1024) },
    ];
    const zip = await zipFolder(inTurn(parts), going);
    expect(await unzipped(zip)).toEqual(Object.fromEntries(parts.map(({ path, text }) => [path, text])));
  });

  it("lets others have their turn many times while it packs one long file", async () => {
    let turns = 0;
    let isPacking = true;
    const turn = (): void => {
      turns += 1;
      if (isPacking) setImmediate(turn);
    };
    setImmediate(turn);
    await zipFolder(inTurn([{ path: "logs/long.csv", text: rows(4 * 1024 * 1024) }]), going);
    isPacking = false;
    expect(turns).toBeGreaterThanOrEqual(16);
  });

  it("ends in the midst of a file once it is cancelled", async () => {
    const stopping = new AbortController();
    let asked = 0;
    async function* parts(): AsyncGenerator<PackedPart> {
      for (;;) {
        asked += 1;
        setImmediate(() => stopping.abort(new Error("cancelled")));
        yield { path: `logs/${asked}.csv`, text: rows(4 * 1024 * 1024) };
      }
    }
    await expect(zipFolder(parts(), stopping.signal)).rejects.toThrow("cancelled");
    expect(asked).toBe(1);
  });
});
