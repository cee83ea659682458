/**
 * Work whose latest result is kept and given again while it is asked of the very same arguments: who chooses another rule
 * asks of the same rows. For pure work alone.
 */
export function forTheSame<Asked extends readonly unknown[], Result>(
  work: (...asked: Asked) => Result,
): (...asked: Asked) => Result {
  let latest: { readonly asked: Asked; readonly result: Result } | null = null;
  return (...asked) => {
    if (latest === null || !latest.asked.every((value, i) => value === asked[i]))
      latest = { asked, result: work(...asked) };
    return latest.result;
  };
}
