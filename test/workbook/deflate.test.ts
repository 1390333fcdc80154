import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import * as anywhere from "../../src/workbook/deflate";
import * as inNode from "../../src/workbook/deflate.node";

const WAYS = { anywhere, inNode };
const PAIRS = Object.entries(WAYS).flatMap(([packs, a]) =>
  Object.entries(WAYS).map(([unpacks, b]) => ({ packs, unpacks, a, b })),
);

type Way = typeof anywhere;

function packed({ deflater }: Way, pieces: readonly Uint8Array[]): Buffer {
  const chunks: Uint8Array[] = [];
  const stream = deflater((chunk) => chunks.push(chunk));
  pieces.forEach((piece, i) => stream.push(piece, i === pieces.length - 1));
  return Buffer.concat(chunks);
}

function unpacked({ inflate }: Way, bytes: Uint8Array, size: number): { ended: string; whole: Buffer } {
  const chunks: Uint8Array[] = [];
  const ended = inflate(bytes, size, (chunk) => chunks.push(chunk) > 0);
  return { ended, whole: Buffer.concat(chunks) };
}

/** Bytes as a sheet has them, alike over long stretches, so that a piece refers back into the one before. */
const alike = fc
  .array(fc.tuple(fc.uint8Array({ minLength: 1, maxLength: 60 }), fc.integer({ min: 1, max: 900 })), {
    minLength: 1,
    maxLength: 6,
  })
  .map((list) => list.map(([bytes, times]) => Buffer.concat(Array.from({ length: times }, () => bytes))));

describe("packing and unpacking, by Node and where Node is not", () => {
  test.each(PAIRS)("what $packs packs by pieces, $unpacks unpacks", ({ a, b }) => {
    fc.assert(
      fc.property(alike, (pieces) => {
        const all = Buffer.concat(pieces);
        const { ended, whole } = unpacked(b, packed(a, pieces), all.length);
        expect(ended).toBe("done");
        expect(whole.equals(all)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  test.each(PAIRS)("an empty part by $packs, read by $unpacks", ({ a, b }) => {
    expect(unpacked(b, packed(a, [new Uint8Array(0)]), 0)).toEqual({ ended: "done", whole: Buffer.alloc(0) });
  });

  test("in Node a piece refers back into the one before", () => {
    const noise = Uint8Array.from({ length: 20_000 }, (_, i) => (i * i * 31 + (i >> 3) * 7) & 255);
    const once = packed(inNode, [noise]).length;
    expect(packed(inNode, [noise, noise]).length).toBeLessThan(once + once / 10);
  });

  test.each(Object.entries(WAYS))("%s cuts off what unpacks to more than it declares", (_, way) => {
    const bomb = deflateRawSync(Buffer.alloc(50_000_000));
    const { ended, whole } = unpacked(way, bomb, 1000);
    expect(ended).toBe("longer");
    expect(whole.length).toBeLessThanOrEqual(1000);
  });

  test.each(Object.entries(WAYS))("%s tells what is no deflated stream, and one cut short", (_, way) => {
    expect(unpacked(way, Uint8Array.of(255, 254, 253, 1, 2, 3), 100).ended).toBe("broken");
    const whole = deflateRawSync(Buffer.from("0123456789".repeat(1000)));
    expect(unpacked(way, whole.subarray(0, whole.length - 4), 10_000).ended).toBe("broken");
  });

  test.each(Object.entries(WAYS))("%s stops when told, and lets the errors of its taker through", (_, way) => {
    const bytes = packed(way, [Buffer.alloc(3_000_000, "abc")]);
    let pieces = 0;
    expect(way.inflate(bytes, 3_000_000, () => ++pieces < 1)).toBe("done");
    expect(pieces).toBe(1);
    expect(() =>
      way.inflate(bytes, 3_000_000, () => {
        throw new RangeError("of the taker");
      }),
    ).toThrow("of the taker");
  });
});
