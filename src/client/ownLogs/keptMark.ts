/** Says to every page, at once, that this browser keeps logs of the reader's own. */
export const KEPT_MARK = "piecebook-own-logs";

/** Does this browser keep logs of the reader's own? False where it keeps nothing at all. */
export function keepsLogs(): boolean {
  try {
    return localStorage.getItem(KEPT_MARK) !== null;
  } catch {
    return false;
  }
}
