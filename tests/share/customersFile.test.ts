import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { withKeys } from "../../scripts/share/customersFile.ts";
import { readLogs } from "../../src/tables/readLogs.ts";

const KEY = "abcdefghijklmnopqrstuvwx";
const plain = { encoding: null, delimiter: null };
const utf8 = (text: string): Uint8Array => Buffer.from(text, "utf8");
const said = (found: Uint8Array): string => Buffer.from(found).toString("utf8");

async function read(bytes: Uint8Array, toml = 'name = "X"\n') {
  const file = (path: string, content: Uint8Array) => ({
    path,
    async *chunks() {
      yield content;
    },
  });
  const { tables, problems } = await readLogs([file("customers.csv", bytes), file("house.toml", utf8(toml))]);
  const table = tables.get("customers");
  const column = (name: string) => (table?.columns.get(name) ?? []) as readonly (string | null)[];
  return {
    customers: column("customer"),
    keys: column("link_key"),
    notes: column("note"),
    names: column("name"),
    problems,
  };
}

describe("withKeys(bytes, keys, options)", () => {
  it.each([
    [
      "an empty cell",
      "customer,name,share,link_key,note\nA,One,yes,,x\nB,Two,no,,\n",
      2,
      `customer,name,share,link_key,note\nA,One,yes,${KEY},x\nB,Two,no,,\n`,
    ],
    ["an old key", "customer,share,link_key\r\nA,yes,oldoldold\r\n", 2, `customer,share,link_key\r\nA,yes,${KEY}\r\n`],
    [
      "a quoted cell",
      'customer,share,link_key,note\nA,yes,"","say ""hi"", twice\nor more"\n',
      2,
      `customer,share,link_key,note\nA,yes,"${KEY}","say ""hi"", twice\nor more"\n`,
    ],
    [
      "a row that breaks off before it",
      "customer;share;name;link_key\nA;yes\n",
      2,
      `customer;share;name;link_key\nA;yes;;${KEY}\n`,
    ],
    [
      "a file without the column",
      'customer,share,note\nA,yes,"a, b"\n\nB,no,\n',
      2,
      `customer,share,note,link_key\nA,yes,"a, b",${KEY}\n\nB,no,\n`,
    ],
    [
      "a file without the column or a last line end",
      "customer\tshare\nA\tyes",
      2,
      `customer\tshare\tlink_key\nA\tyes\t${KEY}`,
    ],
    [
      "a spreadsheet's first line",
      "sep=;\r\ncustomer;share;link_key\r\nA;yes;\r\n",
      3,
      `sep=;\r\ncustomer;share;link_key\r\nA;yes;${KEY}\r\n`,
    ],
    [
      "a row below one of several lines",
      'customer,share,note,link_key\nA,no,"one\ntwo",\nB,yes,,\n',
      4,
      `customer,share,note,link_key\nA,no,"one\ntwo",\nB,yes,,${KEY}\n`,
    ],
    [
      "a byte order mark and letters of many bytes",
      "\ufeffcustomer,name,share,link_key\nA,Bräu 麦 𝔐,yes,\n",
      2,
      `\ufeffcustomer,name,share,link_key\nA,Bräu 麦 𝔐,yes,${KEY}\n`,
    ],
  ])("writes into %s and changes nothing else", async (_, before, line, after) => {
    const written = withKeys(utf8(before), new Map([[line, KEY]]), plain);
    expect(said(written)).toBe(after);
    expect((await read(written)).keys).toContain(KEY);
  });

  it.each(["utf-16le", "utf-16be"])("writes %s as it is, with its mark", async (encoding) => {
    const text = "\ufeffcustomer,name,share,link_key\r\nA,Bräu,yes,\r\n";
    const little = Buffer.from(text, "utf16le");
    const bytes = encoding === "utf-16le" ? little : Buffer.from(little).swap16();
    const written = withKeys(bytes, new Map([[2, KEY]]), plain);
    expect(new TextDecoder(encoding, { ignoreBOM: true }).decode(written)).toBe(text.replace("yes,", `yes,${KEY}`));
    expect((await read(written)).keys).toEqual([KEY]);
  });

  it("writes Windows-1252 where house.toml declares it, and leaves its bytes", async () => {
    const bytes = Buffer.concat([utf8("customer,name,share,link_key\nA,"), Buffer.from([0x80, 0xe4]), utf8(",yes,\n")]);
    const written = withKeys(bytes, new Map([[2, KEY]]), { encoding: "windows-1252", delimiter: null });
    expect([...written]).toEqual([...bytes.subarray(0, -1), ...utf8(`${KEY}\n`)]);
  });

  it("refuses an encoding of which it cannot tell the places", () => {
    const bytes = Buffer.from([...utf8("customer,name,share,link_key\nA,"), 0x8a, 0xbf, ...utf8(",yes,\n")]);
    expect(() => withKeys(bytes, new Map([[2, KEY]]), { encoding: "shift_jis", delimiter: null })).toThrow("shift_jis");
  });

  it("changes no cell but the key's, whatever the cells hold", async () => {
    const cell = fc.string({ unit: fc.constantFrom("a", "B", "7", "ä", "麦", ",", '"', "\n", "=", " "), maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.record({ note: cell, share: fc.constantFrom("yes", "no") }), { minLength: 1, maxLength: 6 }),
        fc.constantFrom("\n", "\r\n"),
        fc.boolean(),
        async (rows, end, mark) => {
          const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
          const lines = rows.map(({ note, share }, at) => `C${at},${quoted(note)},${share},`);
          const before = `${mark ? "\ufeff" : ""}${["customer,note,share,link_key", ...lines].join(end)}${end}`;
          const starts = rows.map((_, at) => before.slice(0, before.indexOf(`C${at},`)).split(/\r\n|\n/).length);
          const keys = new Map(starts.map((line, at) => [line, `${KEY}${at}`]));
          const after = await read(withKeys(utf8(before), keys, plain));
          const untouched = await read(utf8(before));
          expect(after.keys).toEqual(rows.map((_, at) => `${KEY}${at}`));
          expect(after.notes).toEqual(untouched.notes);
          expect(after.customers).toEqual(untouched.customers);
        },
      ),
      { numRuns: 60 },
    );
  });
});
