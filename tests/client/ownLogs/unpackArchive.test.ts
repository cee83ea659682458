import { strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { type ChosenFile, RefusedLogs } from "../../../src/client/ownLogs/chosenFile.ts";
import { crc32 } from "../../../src/client/ownLogs/crc32.ts";
import { ownLogFiles } from "../../../src/client/ownLogs/ownLogFiles.ts";
import { type SizedLog, unpackArchive } from "../../../src/client/ownLogs/unpackArchive.ts";
import { readLogs } from "../../../src/tables/readLogs.ts";
import { goodArchives, lockedArchive, lzmaArchive, PACKED_KILNING } from "./madeArchives.ts";

const KILNING = "run,kiln,loaded_at\n26-1,K1,2026-03-01 10:00\n";

const zipOf = (bytes: Uint8Array<ArrayBuffer> | string): ChosenFile => ({ path: "logs.zip", blob: new Blob([bytes]) });
const fromBase64 = (text: string): ChosenFile => zipOf(new Uint8Array(Buffer.from(text, "base64")));

/** A file of an archive as it comes out, up to what went wrong. */
async function readOut(log: SizedLog | undefined): Promise<{ bytes: Uint8Array; largest: number; error: unknown }> {
  const pieces: Uint8Array[] = [];
  let error: unknown = null;
  try {
    for await (const piece of log?.chunks() ?? []) pieces.push(piece);
  } catch (thrown) {
    error = thrown;
  }
  return { bytes: Buffer.concat(pieces), largest: Math.max(0, ...pieces.map(({ length }) => length)), error };
}

const textOut = async (log: SizedLog | undefined): Promise<string> => {
  const { bytes, error } = await readOut(log);
  if (error !== null) throw error;
  return new TextDecoder().decode(bytes);
};

async function refusalOf(archive: ChosenFile): Promise<string> {
  const error = await unpackArchive(archive).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(RefusedLogs);
  return error instanceof RefusedLogs ? error.message : "";
}

/** The number at `offset` of the index's only entry put in place of what stands there. */
function withIndexNumber(zip: Uint8Array<ArrayBuffer>, offset: number, value: number): Uint8Array<ArrayBuffer> {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const index = view.getUint32(zip.length - 22 + 16, true);
  view.setUint32(index + offset, value, true);
  return zip;
}

describe("crc32(bytes, before)", () => {
  // The check value of CRC-32/ISO-HDLC in the Catalogue of parametrised CRC algorithms.
  it("gives 0xcbf43926 for 123456789, whole and in two pieces", () => {
    expect(crc32(strToU8("123456789"), 0)).toBe(0xcbf43926);
    expect(crc32(strToU8("6789"), crc32(strToU8("12345"), 0))).toBe(0xcbf43926);
  });
});

describe("unpackArchive(archive)", () => {
  it.each(Object.entries(goodArchives))("reads an archive with %s, as another program wrote it", async (_, base64) => {
    const files = await unpackArchive(fromBase64(base64));
    expect(files).toHaveLength(1);
    expect(files[0]?.bytes).toBe(PACKED_KILNING.length);
    expect(await textOut(files[0])).toBe(PACKED_KILNING);
  });

  it("reads an archive's files again from the start, and leaves out folders and what a system packed beside them", async () => {
    const zip = zipSync({ "logs/": new Uint8Array(0), "logs/a.csv": strToU8(KILNING), "__MACOSX/a": strToU8("x") });
    const files = await unpackArchive(zipOf(zip));
    expect(files.map(({ path, bytes }) => [path, bytes])).toEqual([["logs/a.csv", KILNING.length]]);
    for (let again = 0; again < 2; again++) expect(await textOut(files[0])).toBe(KILNING);
  });

  it("reads names with letters of many lands, and folders told with a backslash", async () => {
    const zip = zipSync({ "Mälzerei\\readings\\März 大麦.csv": strToU8(KILNING) });
    expect((await unpackArchive(zipOf(zip))).map(({ path }) => path)).toEqual(["Mälzerei/readings/März 大麦.csv"]);
  });

  it("hands over a file of 64 MB in pieces of some megabytes at most", async () => {
    const zip = zipSync({ "readings/a.csv": new Uint8Array(64_000_000), "kilning.csv": strToU8(KILNING) });
    const [large, small] = await unpackArchive(zipOf(zip));
    const { bytes, largest, error } = await readOut(large);
    expect(error).toBeNull();
    expect(bytes.length).toBe(64_000_000);
    expect(largest).toBeLessThan(18_000_000);
    expect(await textOut(small)).toBe(KILNING);
  });

  it("stops at the size that the index says, however much would come out", async () => {
    const zip = withIndexNumber(zipSync({ "a.csv": new Uint8Array(20_000_000) }), 24, 70_000);
    const [file] = await unpackArchive(zipOf(zip));
    expect(file?.bytes).toBe(70_000);
    const { bytes, error } = await readOut(file);
    expect(bytes.length).toBeLessThanOrEqual(70_000);
    expect(String(error)).toContain("logs.zip is damaged at a.csv");
  });

  it.each([
    ["less comes out than the index says", 24, 1_000_000],
    ["another checksum comes out", 16, 12_345],
    ["the file is packed in fewer bytes", 20, 10],
    ["its place is another", 42, 3],
  ])("finds damage where %s", async (_, offset, value) => {
    const zip = withIndexNumber(zipSync({ "a.csv": strToU8(KILNING.repeat(20)) }), offset, value);
    expect(String((await readOut((await unpackArchive(zipOf(zip)))[0])).error)).toContain("is damaged at a.csv");
  });

  it("says in a sentence why it cannot be unpacked", async () => {
    const cut = (bytes: number) => zipOf(zipSync({ "a.csv": strToU8(KILNING) }).slice(0, -bytes));
    expect(await refusalOf(zipOf("not packed at all"))).toMatch(/^logs\.zip cannot be unpacked: it is no zip archive/);
    expect(await refusalOf(zipOf(""))).toContain("no zip archive");
    expect(await refusalOf(cut(5))).toContain("no zip archive, or a damaged one");
    expect(await refusalOf(fromBase64(lockedArchive))).toContain("logs/kilning.csv is locked with a password");
    expect(await refusalOf(fromBase64(lzmaArchive))).toContain("packed in a way that a browser does not know");
    expect(await refusalOf(zipOf(zipSync({})))).toBe("logs.zip holds no files.");
    expect(await refusalOf(zipOf(zipSync({ "logs/": new Uint8Array(0) })))).toBe("logs.zip holds no files.");
  });

  it("takes any bytes at all for an archive or says why not, and never hangs or breaks", async () => {
    const good = zipSync({ "kilning.csv": strToU8(KILNING.repeat(9)), "events.csv": strToU8("on,kind\n") });
    for (let at = 0; at < good.length; at += 1) {
      const bad = good.slice();
      bad[at] = (bad[at] as number) ^ 0xff;
      let files: readonly SizedLog[] = [];
      try {
        files = await unpackArchive(zipOf(bad));
      } catch (error) {
        expect(error).toBeInstanceOf(RefusedLogs);
      }
      for (const file of files) {
        if (file.bytes > 1_000_000) continue;
        const { bytes, error } = await readOut(file);
        // What was not found to be damaged is what was packed.
        if (error === null) expect([KILNING.repeat(9), "on,kind\n"]).toContain(new TextDecoder().decode(bytes));
        else expect(String(error)).toMatch(/is damaged at/);
      }
    }
  });

  it("makes damage inside an archive a Problem of that file alone", async () => {
    const zip = zipSync({ "kilning.csv": strToU8(KILNING.repeat(50)), "events.csv": strToU8("on,kind,scope,what\n") });
    zip.fill(0xff, 45, 60);
    const reading = { house: 'time_zone = "UTC"\n', limits: { all: 10_000, oneFile: 5_000 }, onBytes: () => {} };
    const { problems } = await readLogs((await ownLogFiles([zipOf(zip)], reading)).files);
    expect(problems).toMatchObject([{ file: "kilning.csv", rule: "file-unreadable", effect: "file-set-aside" }]);
    expect(problems[0]?.message).toBe("The file could not be read: logs.zip is damaged at kilning.csv; pack it anew.");
  });
});
