/** As many as there are choices that a reader goes back and forth between. */
const MOST_KEPT = 6;

/**
 * Work whose latest results are kept and given again while it is asked of the very same arguments: who chooses another rule
 * asks of the same rows. For pure work alone.
 */
export function forTheSame<Asked extends readonly unknown[], Result>(
  work: (...asked: Asked) => Result,
): (...asked: Asked) => Result {
  const kept: { readonly asked: Asked; readonly result: Result }[] = [];
  return (...asked) => {
    const known = kept.find((one) => one.asked.every((value, i) => value === asked[i]));
    if (known !== undefined) return known.result;
    const result = work(...asked);
    kept.push({ asked, result });
    if (kept.length > MOST_KEPT) kept.shift();
    return result;
  };
}
