/** Tells on the error stream how far a long part has come, so that the tables can be kept in a file by themselves. */
export function progress(text: string): void {
  process.stderr.write(`${text}\n`);
}
