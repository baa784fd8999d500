import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { processorTime } from '../../../build/bench/processor-time';
import { drawingSources } from '../../../build/fuzz/drawing-sources';
import { hostileDrawings } from '../../../build/fuzz/hostile-drawings';
import { mutatedDrawing } from '../../../build/fuzz/mutate-drawing';
import { SeededRandom } from '../../../build/fuzz/seeded-random';
import { tryDrawing } from '../../../build/fuzz/try-drawing';
import { limits } from '../../../core/drawing/limits';
import { outlineOf, readDrawing } from '../../../core/drawing/read-drawing';
import { block, bytes, circle, dxf, problemOf, square, valueOf, type Groups } from './drawn';

/** A share of what `npm run fuzz:drawing` does at length: the same seeds every time. */
const sources = drawingSources(fileURLToPath(new URL('../../../', import.meta.url)));

function timed(bytesOf: Uint8Array, seed: number): number {
  // Throws where anything but a result or a clear problem comes of it.
  return processorTime(() => expect(tryDrawing(bytesOf, seed)).not.toBe(''));
}

describe('damaged drawings', () => {
  it('200 of them: each read or refused in words, in time', () => {
    for (let seed = 1; seed <= 200; seed++)
      expect(timed(mutatedDrawing(sources, seed, 800), seed)).toBeLessThan(5);
  }, 300_000);
});

describe('hostile drawings', () => {
  it.each(hostileDrawings.map((make) => [make.name, make] as const))(
    '%s',
    (_, make) => {
      for (const size of [3, 200, 1500]) {
        const text = make(new SeededRandom(size), size);
        expect(timed(bytes(text), size)).toBeLessThan(5);
      }
    },
    300_000,
  );
});

describe('limits', () => {
  const insert = (name: string, columns: number, rows: number): Groups => [
    ...[0, 'INSERT', 8, '0', 2, name, 10, 0, 20, 0, 70, columns, 71, rows, 44, 5, 45, 5],
  ];

  it('a millionfold array is refused, one of twenty thousand is read', () => {
    const blocks = block('A', circle(0, 0, 1));
    const read = (columns: number, rows: number) =>
      readDrawing(bytes(dxf({ blocks, entities: insert('A', columns, rows) })));
    expect(problemOf(read(1000, 1000)).code).toBe('drawing-too-large');
    expect(problemOf(read(2_147_483_647, 2_147_483_647)).code).toBe('drawing-too-large');
    expect(valueOf(outlineOf(valueOf(read(200, 100)), 'mm', 0.005)).contours).toHaveLength(20_000);
  });

  it('blocks in one another end at a depth, with the reason', () => {
    const blocks = Array.from({ length: 100 }, (_, i) =>
      block(`B${i}`, [...insert(`B${i + 1}`, 1, 1), ...circle(i * 9, 0, 1)]),
    );
    const raw = valueOf(readDrawing(bytes(dxf({ blocks: blocks.flat(), entities: insert('B0', 1, 1) }))));
    expect(raw.pieces).toHaveLength(limits.nesting);
    expect(raw.unused[0]?.reason).toBe('more than 64 blocks in one another');
  });

  it('a file beyond the size that is read is refused before it is looked at', () => {
    const large = new Uint8Array(limits.bytes + 1);
    expect(problemOf(readDrawing(large))).toMatchObject({
      code: 'drawing-too-large',
      what: expect.stringMatching(/134 MB/),
    });
  });

  it('curves that would become too many arcs, and contours that overlap beyond telling, are refused', () => {
    const wild = valueOf(
      readDrawing(bytes(`<svg><path d="M0 0${'C9 90 -90 9 0 0'.repeat(15_000)}"/></svg>`)),
    );
    expect(problemOf(outlineOf(wild, 'mm', 0.005)).code).toBe('drawing-too-large');
    const crowd = Array.from({ length: 3000 }, (_, i) => square(i / 500, i / 700, 20)).flat();
    expect(
      problemOf(outlineOf(valueOf(readDrawing(bytes(dxf({ entities: crowd })))), 'mm', 0.005)).code,
    ).toBe('drawing-too-crowded');
  });
});
