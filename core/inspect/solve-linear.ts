/**
 * The solution of a small square system, rows · x = right, by Gauss's elimination with the largest pivot of each
 * column; null where it has none or no single one.
 */
export function solved(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | null {
  const work = rows.map((row, i) => [...row, right[i] as number]);
  const n = work.length;
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++) {
      if (Math.abs(entry(work, row, column)) > Math.abs(entry(work, pivot, column))) pivot = row;
    }
    const size = entry(work, pivot, column);
    if (!(Math.abs(size) > Number.EPSILON * largest(rows))) return null;
    [work[column], work[pivot]] = [work[pivot] as number[], work[column] as number[]];
    for (let row = 0; row < n; row++) {
      if (row === column) continue;
      const share = entry(work, row, column) / size;
      if (share === 0) continue;
      for (let k = column; k <= n; k++)
        (work[row] as number[])[k] = entry(work, row, k) - share * entry(work, column, k);
    }
  }
  return work.map((row, i) => (row[n] as number) / (row[i] as number));
}

const entry = (rows: readonly (readonly number[])[], row: number, column: number): number =>
  rows[row]?.[column] as number;

const largest = (rows: readonly (readonly number[])[]): number =>
  rows.reduce((most, row) => row.reduce((m, value) => Math.max(m, Math.abs(value)), most), 0);
