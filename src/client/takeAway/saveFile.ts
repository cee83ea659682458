/** Hands a file made on this page to the reader's downloads; nothing goes anywhere else. */
export function saveFile(name: string, type: string, content: BlobPart): void {
  const address = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // A download that has not begun yet still needs the address.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
