import { inflateSync } from "node:zlib";

/** What a PDF of Chromium's holds under one number: its dictionary, and its stream unpacked. */
interface PdfObject {
  readonly dictionary: string;
  readonly stream: string;
}

function objectsOf(pdf: Buffer): ReadonlyMap<number, PdfObject> {
  const text = pdf.toString("latin1");
  const found = new Map<number, PdfObject>();
  for (const { 1: number, 2: dictionary = "", index, 0: head } of text.matchAll(
    /(\d+) 0 obj\n(<<[\s\S]*?>>)(?= stream\r?\n|\nstream\r?\n|\s*endobj)/g,
  )) {
    const start = /^\s*stream\r?\n/.exec(text.slice(index + head.length, index + head.length + 20))?.[0];
    const from = index + head.length + (start?.length ?? 0);
    const bytes =
      start === undefined ? Buffer.alloc(0) : pdf.subarray(from, from + Number(/\/Length (\d+)/.exec(dictionary)?.[1]));
    const packed = start !== undefined && dictionary.includes("/FlateDecode");
    found.set(Number(number), { dictionary, stream: (packed ? inflateSync(bytes) : bytes).toString("latin1") });
  }
  return found;
}

const fromHex = (hex: string): string => Buffer.from(hex, "hex").swap16().toString("utf16le");

/** Code of a glyph, as hex, to the text that it stands for (ISO 32000-1, 9.10.3: ToUnicode CMaps). */
function glyphsOf(map: string): { readonly digits: number; readonly said: ReadonlyMap<string, string> } {
  const said = new Map<string, string>();
  const digits = /begincodespacerange\s*<(\w+)>/.exec(map)?.[1]?.length ?? 4;
  for (const [, pairs = ""] of map.matchAll(/beginbfchar\s([\s\S]*?)endbfchar/g)) {
    for (const [, code = "", text = ""] of pairs.matchAll(/<(\w+)> <(\w+)>/g)) said.set(code, fromHex(text));
  }
  for (const [, ranges = ""] of map.matchAll(/beginbfrange\s([\s\S]*?)endbfrange/g)) {
    for (const [, low = "", high = "", text = ""] of ranges.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      for (let code = Number.parseInt(low, 16); code <= Number.parseInt(high, 16); code++) {
        const letter = String.fromCharCode(Number.parseInt(text, 16) + code - Number.parseInt(low, 16));
        said.set(code.toString(16).toUpperCase().padStart(digits, "0"), letter);
      }
    }
  }
  return { digits, said };
}

/**
 * The text that a reader of a PDF can copy out of it, a line for each piece that was set in one go: what is printed, whatever
 * the page behind it holds. It reads what Chromium writes, and no other PDF.
 */
export function pdfText(pdf: Buffer): string {
  const objects = objectsOf(pdf);
  const of = (number: string | undefined): PdfObject | undefined => objects.get(Number(number));
  const pages = [...objects.values()].filter(({ dictionary }) => /\/Type \/Page\b/.test(dictionary));
  return pages
    .flatMap(({ dictionary }) => {
      const fonts = new Map(
        [...dictionary.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name = "", number]) => {
          const map = /\/ToUnicode (\d+) 0 R/.exec(of(number)?.dictionary ?? "")?.[1];
          return [name, glyphsOf(of(map)?.stream ?? "")] as const;
        }),
      );
      const content = of(/\/Contents (\d+) 0 R/.exec(dictionary)?.[1])?.stream ?? "";
      return [...content.matchAll(/\nBT\n([\s\S]*?)\nET/g)].map(([, block = ""]) => {
        const font = fonts.get(/\/(F\d+) [\d.]+ Tf/.exec(block)?.[1] ?? "");
        if (font === undefined) return "";
        // What a span says that it stands for is no glyph.
        const shown = block.replaceAll(/<<[\s\S]*?>>+ BDC/g, "");
        const codes = [...shown.matchAll(/<([0-9A-F]+)>/g)].flatMap(
          ([, hex = ""]) => hex.match(new RegExp(`.{${font.digits}}`, "g")) ?? [],
        );
        return codes.map((code) => font.said.get(code) ?? "\ufffd").join("");
      });
    })
    .join("\n");
}
