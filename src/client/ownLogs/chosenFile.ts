/** A file as a reader chose it: on their disk, or kept in this browser. It can cross to a worker without its bytes being read. */
export interface ChosenFile {
  /** With the folders that it was chosen with, `/` between parts. */
  readonly path: string;
  readonly blob: Blob;
}

/** A file that cannot be taken in; its message is a sentence for the reader. */
export class RefusedLogs extends Error {}
