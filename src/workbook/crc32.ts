/** Running CRC-32 of a zip entry (ISO 3309, the polynomial of the zip format); start from 0. */
export function crc32(bytes: Uint8Array, before = 0): number {
  let crc = ~before;
  for (let i = 0; i < bytes.length; i++) crc = (TABLE[(crc ^ bytes[i]!) & BYTE] ?? 0) ^ (crc >>> 8);
  return ~crc >>> 0;
}

const POLYNOMIAL = 0xedb88320;
const BYTE = 0xff;
const TABLE = Int32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? POLYNOMIAL ^ (c >>> 1) : c >>> 1;
  return c;
});
