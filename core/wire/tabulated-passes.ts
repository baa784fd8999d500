import { done, failed, type Result } from '../problem';
import { sayLength } from '../say';
import type { Technology, TechnologyPass, TechnologyRow } from '../technology';

/** 0.010 in wire (0.254 mm) goes by the row for 0.25 mm: the inch sizes are 1.6 % off the metric ones. */
const sameWire = 0.02;

/**
 * The passes that a technology table has for a wire in a block of a height, both mm: the rows of the wire next to it
 * (within 2 %), and of these the one with the next height at or above the block's. Nothing is interpolated: a row
 * holds what was tried. A wire or a height that the table does not reach is a problem.
 */
export function tabulatedPasses(
  technology: Technology,
  wire: number,
  height: number,
): Result<readonly TechnologyPass[]> {
  const nearest = technology.rows.reduce(
    (least, row) => Math.min(least, Math.abs(row.wire - wire)),
    Number.POSITIVE_INFINITY,
  );
  if (!(nearest <= sameWire * wire)) {
    return failed(
      'technology-no-wire',
      `The technology table "${technology.name}" has no row for ${sayLength(wire)} wire`,
      '',
      'Choose a wire of the table, add its rows, or type the passes.',
    );
  }
  const rows = technology.rows.filter((row) => Math.abs(row.wire - wire) === nearest);
  const row = rows
    .filter((one) => one.height >= height)
    .reduce<TechnologyRow | null>((low, one) => (low && low.height <= one.height ? low : one), null);
  if (row) return done(row.passes);
  const tallest = Math.max(...rows.map((one) => one.height));
  return failed(
    'technology-no-height',
    `The technology table "${technology.name}" goes up to ${sayLength(tallest)} for ${sayLength(wire)} wire, and the block is ${sayLength(height)} high`,
    '',
    'Add a row for the height, or type the passes.',
  );
}
