/** A Markdown table with its columns lined up; the first column to the left, the others to the right. */
export function markdownTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = head.map((title, k) =>
    Math.max(3, title.length, ...rows.map((row) => (row[k] ?? '').length)),
  );
  const line = (cells: readonly string[]): string =>
    `| ${widths.map((width, k) => (k === 0 ? (cells[k] ?? '').padEnd(width) : (cells[k] ?? '').padStart(width))).join(' | ')} |`;
  const rule = `| ${widths.map((width, k) => (k === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
  return [line(head), rule, ...rows.map(line)].join('\n');
}
