/**
 * Gauge blocks that wring up to a height, mm, from a metric set of 111: 1.001 to 1.009, 1.01 to 1.49, 0.5 to 24.5 by
 * halves, and 25, 50, 75, 100. The height is rounded to a micron first. Fewest blocks by the shop's way: from the last
 * digit to the first, each block once. Null where the set does not make it (under 1 mm, odd ends under 2 mm, over 250).
 */
export function gaugeStack(height: number): readonly number[] | null {
  let left = Math.round(height * 1000);
  const blocks: number[] = [];
  const take = (microns: number) => {
    blocks.push(microns / 1000);
    left -= microns;
  };
  if (left % 10 !== 0) take(1000 + (left % 10));
  // What remains has whole hundredths; one block makes it a multiple of a half.
  if (left % 500 !== 0) take(1000 + (left % 500));
  const large = [100, 75, 50, 25].filter((size) => {
    if (left - size * 1000 < 0) return false;
    left -= size * 1000;
    return true;
  });
  if (left < 0) return null;
  if (left > 0) {
    if (left > 24_500) return null;
    take(left);
  }
  return blocks.length + large.length === 0 ? null : [...blocks, ...large];
}
