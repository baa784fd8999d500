import type { Technology, TechnologyRow } from '../../core/technology';

/** The rows as a person looks for them, with their places in the table: thick wire first, low blocks first. */
export function sortedRows({ rows }: Technology): readonly { row: TechnologyRow; index: number }[] {
  return rows
    .map((row, index) => ({ row, index }))
    .sort((a, b) => b.row.wire - a.row.wire || a.row.height - b.row.height || a.index - b.index);
}

export const withRow = (table: Technology, index: number, change: Partial<TechnologyRow>): Technology => ({
  ...table,
  rows: table.rows.map((row, k) => (k === index ? { ...row, ...change } : row)),
});

export const withoutRow = (table: Technology, index: number): Technology => ({
  ...table,
  rows: table.rows.filter((_, k) => k !== index),
});

/** With a copy of a row, for blocks half as high again: above the highest row of its wire, so that none is hidden. */
export function withCopy(table: Technology, index: number): Technology {
  const row = table.rows[index];
  if (!row) return table;
  const heights = table.rows.filter(({ wire }) => wire === row.wire).map(({ height }) => height);
  return { ...table, rows: [...table.rows, { ...row, height: Math.max(...heights) * 1.5 }] };
}
