import { encode } from "uqr";

/** A QR code as one path: `size` modules wide, its quiet zone of four modules (ISO/IEC 18004) in it. */
export interface QrPath {
  readonly size: number;
  readonly path: string;
}

/** The code of `text` at error correction level M, each row's runs of dark modules as rectangles of one path. */
export function qrPath(text: string): QrPath {
  const { data, size } = encode(text, { ecc: "M", border: 4 });
  const path = data
    .map((row, y) => {
      let drawn = "";
      for (let x = 0; x < row.length; x++) {
        if (row[x] !== true) continue;
        let end = x;
        while (row[end + 1] === true) end++;
        drawn += `M${x} ${y}h${end - x + 1}v1h-${end - x + 1}z`;
        x = end;
      }
      return drawn;
    })
    .join("");
  return { size, path };
}
