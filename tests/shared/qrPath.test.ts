import decodeQR from "qr/decode.js";
import { describe, expect, it } from "vitest";
import { qrPath } from "../../src/shared/qrPath.ts";

const MODULE = 4;

/** What a camera would see of the path: black where a rectangle lies, white elsewhere. */
function picture({ size, path }: ReturnType<typeof qrPath>) {
  const side = size * MODULE;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [, x, y, wide] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g)) {
    for (let down = Number(y) * MODULE; down < (Number(y) + 1) * MODULE; down++) {
      for (let across = Number(x) * MODULE; across < (Number(x) + Number(wide)) * MODULE; across++) {
        data.fill(0, (down * side + across) * 4, (down * side + across) * 4 + 3);
      }
    }
  }
  return { width: side, height: side, data };
}

describe("qrPath(text)", () => {
  it.each([
    "https://malt.example/b/QOephbOlYlaqk8yZk4HvKviE/zg5jJrbRKDjeAxKr/",
    "https://xn--mlzerei-5wa.example/chargen/DPbJ3MzIRy3r_zmt8h3bsitk/v9wxHHmWIYxU0Gg_/",
    `https://malt.example/${"long/".repeat(60)}`,
  ])("is read back as %s by another house's decoder", (text) => {
    expect(decodeQR(picture(qrPath(text)))).toBe(text);
  });

  it("keeps a quiet zone of four modules all round (ISO/IEC 18004)", () => {
    const { size, path } = qrPath("https://malt.example/");
    for (const [, x, y, wide] of path.matchAll(/M(\d+) (\d+)h(\d+)/g)) {
      expect(Number(x)).toBeGreaterThanOrEqual(4);
      expect(Number(y)).toBeGreaterThanOrEqual(4);
      expect(Number(x) + Number(wide)).toBeLessThanOrEqual(size - 4);
      expect(Number(y)).toBeLessThan(size - 4);
    }
  });
});
