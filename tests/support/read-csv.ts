/** RFC 4180, section 2, written for the tests: rows end in CRLF, quotes enclose, a quote inside is doubled. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const sign = text.charAt(i);
    if (quoted && sign === '"' && text[i + 1] === '"') cell += text.charAt(i++);
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && (sign === ',' || (sign === '\r' && text[i + 1] === '\n'))) {
      rows.at(-1)?.push(cell);
      cell = '';
      if (sign === '\r') {
        rows.push([]);
        i++;
      }
    } else cell += sign;
  }
  if (quoted || rows.pop()?.length !== 0) throw new Error('The last row does not end as RFC 4180 wants it');
  return rows;
}
