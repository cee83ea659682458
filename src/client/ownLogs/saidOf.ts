/** How browsers and the engine say that there is no memory left. */
const OUT_OF_MEMORY = /allocation failed|out of memory|invalid array length|could not allocate|memory access/i;

/** What went wrong, as a sentence for the reader. */
export function saidOf(error: unknown): string {
  const why = error instanceof Error ? error.message : String(error);
  if (!OUT_OF_MEMORY.test(why)) return why;
  return "The memory that this browser gives a page ran out. Choose fewer of the readings, or make the site on your computer.";
}
