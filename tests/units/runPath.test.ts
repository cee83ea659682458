import fc from "fast-check";
import { expect, test } from "vitest";
import { runFolder, runPath } from "../../src/units/runPath.ts";

test("runFolder(run) keeps a plain id as it is", () => {
  expect(runFolder("24-117")).toBe("24-117");
  expect(runFolder("007")).toBe("007");
  expect(runPath("K2-9")).toBe("runs/K2-9/");
});

test("runFolder(run) leaves nothing that a path, an address or a file system reads as its own", () => {
  expect(runFolder("24/117")).toBe("24~2f117");
  expect(runFolder("..")).toBe("~2e~2e");
  expect(runFolder("con")).toBe("~63on");
  expect(runFolder("Weiß 3")).toBe("Wei~c3~9f~203");
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: "grapheme" }), (run) => {
      expect(runFolder(run)).toMatch(/^[A-Za-z0-9~-]{1,100}$/);
    }),
  );
});

test("runFolder(run) gives two ids two folders", () => {
  const id = fc.string({ minLength: 1, unit: "grapheme" });
  fc.assert(
    fc.property(id, id, (one, other) => {
      fc.pre(one !== other);
      expect(runFolder(one)).not.toBe(runFolder(other));
    }),
  );
});

test("runFolder(run) refuses an empty id", () => {
  expect(() => runFolder("")).toThrow(RangeError);
});
