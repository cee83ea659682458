import { expect, test, vi } from "vitest";
import { lazily } from "../../src/bodies/lazily.ts";

test("lazily(fields) works out each field when it is first read, and once", () => {
  const high = vi.fn(() => ({ percent: 5 }));
  const low = vi.fn(() => ({ percent: 3 }));
  const limits = lazily<{ high: { percent: number }; low: { percent: number } }>({ high, low });
  expect(high).not.toHaveBeenCalled();
  expect(limits.high).toBe(limits.high);
  expect(high).toHaveBeenCalledTimes(1);
  expect(low).not.toHaveBeenCalled();
  expect({ ...limits }).toEqual({ high: { percent: 5 }, low: { percent: 3 } });
});
