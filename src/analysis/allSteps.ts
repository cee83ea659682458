/** The result of work that can be done in steps, with all of its steps at once. */
export function allSteps<Result>(work: Generator<void, Result>): Result {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
