/** Milliseconds that `work` takes, and what it gives. */
export async function timed<T>(
  work: () => T | Promise<T>,
): Promise<{ readonly milliseconds: number; readonly result: T }> {
  const start = performance.now();
  const result = await work();
  return { milliseconds: performance.now() - start, result };
}
