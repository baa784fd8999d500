/** In which column of a line each field stands; −1 where the heading doesn't name it. */
export interface Columns {
  readonly x: number;
  readonly y: number;
  readonly id: number;
  readonly feature: number;
}

/** The columns that a heading names, in any order; null for a line that is none. */
export function headingOf(cells: readonly string[]): Columns | null {
  const words = cells.map((cell) =>
    cell
      .toLowerCase()
      .replace(/[([].*$/, '')
      .trim(),
  );
  const find = (names: RegExp) => words.findIndex((word) => names.test(word));
  const [x, y] = [
    find(/^(x|x[ _-]?(pos|actual|act|meas|mm|in|inch)\.?)$/),
    find(/^(y|y[ _-]?(pos|actual|act|meas|mm|in|inch)\.?)$/),
  ];
  if (x < 0 || y < 0) return null;
  return {
    x,
    y,
    id: find(/^(id|no\.?|nr\.?|#|point|name|label|point id|point no\.?)$/),
    feature: find(/^(feature|element|contour|group|member)$/),
  };
}

/** A line's fields; null where x or y is no number. */
export function fieldsByColumn(
  cells: readonly string[],
  columns: Columns,
): { x: number; y: number; id: string; feature: string } | null {
  const x = numberOf(cells[columns.x]);
  const y = numberOf(cells[columns.y]);
  if (!Number.isFinite(x) || !Number.isFinite(y)) return null;
  return { x, y, id: cells[columns.id] ?? '', feature: cells[columns.feature] ?? '' };
}

/** A decimal point or comma; NaN for anything else. */
export function numberOf(text: string | undefined): number {
  const clean = (text ?? '').replace(',', '.');
  return /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d{1,3})?$/i.test(clean) ? Number(clean) : Number.NaN;
}
