import { expect, test, vi } from "vitest";
import { forTheSame } from "../../src/report/forTheSame.ts";

test("forTheSame(work) gives a result again for the very same arguments, works anew for others, and keeps the latest few", () => {
  const work = vi.fn((rows: readonly number[], factor: number) => rows.map((row) => row * factor));
  const kept = forTheSame(work);
  const rows = [1, 2];
  const first = kept(rows, 2);
  expect(first).toEqual([2, 4]);
  expect(kept(rows, 2)).toBe(first);
  expect(work).toHaveBeenCalledTimes(1);
  // Equal is not the same: whoever holds other rows may have changed theirs.
  expect(kept([1, 2], 2)).not.toBe(first);
  expect(kept(rows, 3)).toEqual([3, 6]);
  expect(kept(rows, 2)).toBe(first);
  expect(work).toHaveBeenCalledTimes(3);
  for (let factor = 4; factor < 8; factor += 1) kept(rows, factor);
  expect(kept(rows, 2)).not.toBe(first);
});
