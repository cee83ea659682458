/** What is waited for, or the signal's reason once it is aborted: for work that cannot be stopped itself. */
export function untilAborted<T>(awaited: Promise<T>, signal: AbortSignal): Promise<T> {
  if (signal.aborted) return Promise.reject(signal.reason);
  return new Promise<T>((resolve, reject) => {
    const stop = (): void => reject(signal.reason);
    signal.addEventListener("abort", stop, { once: true });
    awaited.then(resolve, reject).finally(() => signal.removeEventListener("abort", stop));
  });
}
