import { expect, test } from "vitest";
import { varietyFolder, varietyPath } from "../../src/units/varietyPath.ts";

test("varietyPath(variety) keeps plain letters, and writes all others so that no path or address reads them as its own", () => {
  expect(varietyPath("Alva")).toBe("varieties/Alva/");
  expect(varietyPath("Alva/2")).toBe("varieties/Alva~2f2/");
  expect(varietyFolder("..")).toBe("~2e~2e");
  expect(() => varietyFolder("")).toThrow(RangeError);
});
