/**
 * The numbers 0 to n − 1 sorted by x, then y, then `compare`: by counting digits, which for a hundred thousand places
 * takes a tenth of the time that comparing takes.
 */
export function sortByPlace(
  x: Float64Array,
  y: Float64Array,
  compare: (a: number, b: number) => number,
): Int32Array {
  let order = new Int32Array(x.length);
  for (let i = 0; i < order.length; i++) order[i] = i;
  if (x.length < few) {
    const byPlace = (a: number, b: number): number => at(x, a) - at(x, b) || at(y, a) - at(y, b);
    return order.sort((a, b) => byPlace(a, b) || compare(a, b) || a - b);
  }
  for (const column of [y, x]) order = sortedByColumn(order, column);
  // Those on one place by all the rest.
  for (let from = 0; from < order.length;) {
    const first = order[from] as number;
    let to = from + 1;
    while (to < order.length && isSame(x, y, first, order[to] as number)) to++;
    if (to - from > 1) order.subarray(from, to).sort((a, b) => compare(a, b) || a - b);
    from = to;
  }
  return order;
}

const few = 2048;
const at = (column: Float64Array, i: number): number => column[i] as number;
const isSame = (x: Float64Array, y: Float64Array, a: number, b: number): boolean =>
  x[a] === x[b] && y[a] === y[b];

/** Four rounds of sixteen bits, lowest first, on keys whose bits are in the order of the numbers. */
function sortedByColumn(order: Int32Array<ArrayBuffer>, column: Float64Array): Int32Array<ArrayBuffer> {
  // Adding zero turns −0 into 0.
  const numbers = column.map((value) => value + 0);
  const words = new Uint32Array(numbers.buffer);
  for (let i = 0; i < words.length; i += 2) {
    const high = words[i + 1] as number;
    // Negative numbers count down: all bits turned over; of the others the sign.
    const isNegative = high >>> 31 === 1;
    words[i] = isNegative ? ~(words[i] as number) : (words[i] as number);
    words[i + 1] = isNegative ? ~high : high ^ 0x80000000;
  }
  let from = order;
  let to = new Int32Array(order.length);
  for (const [word, shift] of rounds) {
    const counts = new Uint32Array(65_537);
    const digit = (i: number): number => ((words[2 * i + word] as number) >>> shift) & 0xffff;
    for (const i of from) counts[digit(i) + 1] = (counts[digit(i) + 1] as number) + 1;
    for (let k = 1; k < counts.length; k++) counts[k] = (counts[k] as number) + (counts[k - 1] as number);
    for (const i of from) {
      const place = counts[digit(i)] as number;
      to[place] = i;
      counts[digit(i)] = place + 1;
    }
    [from, to] = [to, from];
  }
  return from;
}

const rounds = [
  [0, 0],
  [0, 16],
  [1, 0],
  [1, 16],
] as const;
