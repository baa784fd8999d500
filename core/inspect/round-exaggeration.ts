import * as portable from '../geometry/portable-math';

/**
 * How many times as large deviations are drawn so that the largest of them comes near a share of the picture without
 * passing it: 1, 2 or 5 times a power of ten, at least 1.
 */
export function roundExaggeration(largest: number, room: number): number {
  if (largest <= 0 || room <= largest) return 1;
  const most = room / largest;
  const power = portable.powerOfTen(portable.decadeOf(most));
  return power * ([5, 2, 1].find((factor) => factor * power <= most) ?? 1);
}
