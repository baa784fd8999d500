/** Rows as CSV (RFC 4180: CRLF, quotes doubled). */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows.map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');

/** A spreadsheet runs cells that begin with these; an apostrophe makes them text. Numbers of ours don't come here. */
export const plainCell = (text: string): string => (/^[\s]*[=+\-@|\t\r]/.test(text) ? `'${text}` : text);

const quoted = (cell: string): string => (/[",\r\n;]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
