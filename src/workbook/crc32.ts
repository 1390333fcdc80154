/** Running CRC-32 of a zip entry (ISO 3309, the polynomial of the zip format); start from 0. */
export function crc32(bytes: Uint8Array, before = 0): number {
  let crc = ~before;
  const whole = bytes.length - (bytes.length % STEP);
  let i = 0;
  for (; i < whole; i += STEP) {
    crc ^= bytes[i]! | (bytes[i + 1]! << 8) | (bytes[i + 2]! << 16) | (bytes[i + 3]! << 24);
    crc = T3[crc & BYTE]! ^ T2[(crc >>> 8) & BYTE]! ^ T1[(crc >>> 16) & BYTE]! ^ T0[crc >>> 24]!;
  }
  for (; i < bytes.length; i++) crc = T0[(crc ^ bytes[i]!) & BYTE]! ^ (crc >>> 8);
  return ~crc >>> 0;
}

const POLYNOMIAL = 0xedb88320;
const BYTE = 0xff;
/** Bytes taken at once, each with a table of its own. */
const STEP = 4;
const T0 = Int32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit++) c = c & 1 ? POLYNOMIAL ^ (c >>> 1) : c >>> 1;
  return c;
});
const T1 = next(T0);
const T2 = next(T1);
const T3 = next(T2);

function next(table: Int32Array): Int32Array {
  return table.map((c) => T0[c & BYTE]! ^ (c >>> 8));
}
