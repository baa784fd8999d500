/**
 * The numbers 0 to n − 1 sorted by x, then y, then `compare`: first by counting digits of x, which for a hundred thousand
 * places takes a tenth of the time that comparing takes, then by comparing those whose x begins with the same digits.
 */
export function sortByPlace(
  x: Float64Array,
  y: Float64Array,
  compare: (a: number, b: number) => number,
): Int32Array {
  const byAll = (a: number, b: number): number =>
    at(x, a) - at(x, b) || at(y, a) - at(y, b) || compare(a, b) || a - b;
  let order = new Int32Array(x.length);
  for (let i = 0; i < order.length; i++) order[i] = i;
  if (x.length < few) return order.sort(byAll);
  const keys = keysOf(x);
  for (const shift of [0, 16]) order = sortedByDigit(order, keys, shift);
  for (let from = 0; from < order.length;) {
    const key = keys[order[from] as number];
    let to = from + 1;
    while (to < order.length && keys[order[to] as number] === key) to++;
    if (to - from > 1) order.subarray(from, to).sort(byAll);
    from = to;
  }
  return order;
}

const few = 2048;
const at = (column: Float64Array, i: number): number => column[i] as number;

/** The upper halves of numbers, such that they are in the order of the numbers. */
function keysOf(column: Float64Array): Uint32Array {
  // Adding zero turns −0 into 0.
  const words = new Uint32Array(column.map((value) => value + 0).buffer);
  const keys = new Uint32Array(column.length);
  for (let i = 0; i < keys.length; i++) {
    const high = words[2 * i + 1] as number;
    // Negative numbers count down: all bits turned over; of the others the sign.
    keys[i] = high >>> 31 === 1 ? ~high : high ^ 0x80000000;
  }
  return keys;
}

function sortedByDigit(
  from: Int32Array<ArrayBuffer>,
  keys: Uint32Array,
  shift: number,
): Int32Array<ArrayBuffer> {
  const to = new Int32Array(from.length);
  const counts = new Uint32Array(65_537);
  const digit = (i: number): number => ((keys[i] as number) >>> shift) & 0xffff;
  for (const i of from) counts[digit(i) + 1] = (counts[digit(i) + 1] as number) + 1;
  for (let k = 1; k < counts.length; k++) counts[k] = (counts[k] as number) + (counts[k - 1] as number);
  for (const i of from) {
    const place = counts[digit(i)] as number;
    to[place] = i;
    counts[digit(i)] = place + 1;
  }
  return to;
}
