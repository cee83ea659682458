/** The polynomial of the checksum in ZIP and gzip files, its bits from low to high. */
const POLYNOMIAL = 0xedb88320;

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ POLYNOMIAL : rest >>> 1;
  return rest;
});

/**
 * The CRC-32 of bytes that come piece by piece (ISO 3309, as ZIP archives have it).
 *
 * @param before what the pieces before came to; 0 for the first
 */
export function crc32(bytes: Uint8Array, before: number): number {
  let rest = ~before;
  for (let at = 0; at < bytes.length; at += 1) {
    rest = (table[(rest ^ (bytes[at] as number)) & 0xff] as number) ^ (rest >>> 8);
  }
  return ~rest >>> 0;
}
