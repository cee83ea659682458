import { type KeptRecord, keptRecord } from "../keptRecord.ts";

/** The logs folder that was opened last, kept from visit to visit: where it is, and nothing of what is in it. */
export type KeptFolder = KeptRecord<FileSystemDirectoryHandle>;

/** @param root address of the site, so that two houses on one host do not mix */
export const openKeptFolder = (root: string): KeptFolder =>
  keptRecord(`piecebook-logs-folder ${new URL(root).pathname}`);

/** As much of the permissions of the File System Access API as is used; a browser may grant for good, or ask each visit anew. */
interface Permitted {
  queryPermission?(options: { readonly mode: "readwrite" }): Promise<PermissionState>;
  requestPermission?(options: { readonly mode: "readwrite" }): Promise<PermissionState>;
}

/**
 * May rows be added to this folder?
 *
 * @param asks let the browser ask the reader; only while a click is answered
 */
export async function mayWrite(folder: FileSystemDirectoryHandle, asks: boolean): Promise<boolean> {
  const permitted = folder as Permitted;
  const mode = { mode: "readwrite" } as const;
  const now = await permitted.queryPermission?.(mode);
  if (now === "granted" || !asks) return now === "granted";
  return (await permitted.requestPermission?.(mode)) === "granted";
}
