import type { ChosenFile } from "./chosenFile.ts";

const fileOf = (entry: FileSystemFileEntry): Promise<File> =>
  new Promise((resolve, reject) => entry.file(resolve, reject));

/** A folder gives its entries in batches, an empty one at the end. */
async function entriesOf(folder: FileSystemDirectoryEntry): Promise<readonly FileSystemEntry[]> {
  const reader = folder.createReader();
  const all: FileSystemEntry[] = [];
  for (;;) {
    const some = await new Promise<FileSystemEntry[]>((resolve, reject) => reader.readEntries(resolve, reject));
    if (some.length === 0) return all;
    all.push(...some);
  }
}

async function filesUnder(entry: FileSystemEntry, above: string): Promise<readonly ChosenFile[]> {
  const path = above + entry.name;
  if (entry.isFile) return [{ path, blob: await fileOf(entry as FileSystemFileEntry) }];
  const found: ChosenFile[] = [];
  for (const inner of await entriesOf(entry as FileSystemDirectoryEntry)) {
    if (!inner.name.startsWith(".")) found.push(...(await filesUnder(inner, `${path}/`)));
  }
  return found;
}

/** The files that were dropped, those in folders included. To be called while the drop is told: its list is gone afterwards. */
export async function droppedFiles(dropped: DataTransfer): Promise<readonly ChosenFile[]> {
  const entries = [...dropped.items].map((item) => item.webkitGetAsEntry?.() ?? null);
  const plain = chosenFiles(dropped.files);
  if (entries.every((entry) => entry === null)) return plain;
  const found: ChosenFile[] = [];
  for (const entry of entries) if (entry !== null) found.push(...(await filesUnder(entry, "")));
  return found;
}

/** The files of a file field, with the folder that was chosen. */
export const chosenFiles = (files: FileList | null): readonly ChosenFile[] =>
  [...(files ?? [])].map((file) => ({ path: file.webkitRelativePath || file.name, blob: file }));
