/** More rows of a table than this are read in the die set's CSV. */
export const mostRows = 60;

/** Says how many rows are left out. */
export function MoreRows({ count }: { count: number }) {
  return count > mostRows ? (
    <p className="panel-note">And {count - mostRows} more, in the die set’s CSV.</p>
  ) : null;
}
