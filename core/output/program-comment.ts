/** Longest comment a block carries; with N and words it stays far below the 256 characters of RS274/NGC. */
const lineLength = 70;

/**
 * Text as program comments, one a line: upper case, ASCII, no brackets inside (a bracket would end the comment and
 * turn the rest into words), wrapped between words. Empty text gives no comment.
 */
export function programComment(text: string): string[] {
  const plain = plainText(text).toUpperCase();
  const lines: string[] = [];
  let line = '';
  for (const word of plain.split(' ').flatMap(cutLong)) {
    if (line !== '' && line.length + 1 + word.length > lineLength) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines.map((said) => `(${said})`);
}

/**
 * ASCII that says the same: accents dropped, our signs spelled out, anything else a question mark. Taken apart first:
 * the one sign "⒜" holds two brackets.
 */
function plainText(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/\s*[([{]\s*/g, ' - ')
    .replace(/\s*[)\]}]/g, '')
    .replace(/[×∙·]/g, 'x')
    .replace(/[–—]/g, '-')
    .replace(/[µμ]/g, 'u')
    .replace(/[°]/g, ' deg')
    .replace(/[%;]/g, (sign) => (sign === '%' ? 'percent' : ','))
    .replace(/ß/g, 'ss')
    .replace(/[\s\p{C}]+/gu, ' ')
    .replace(/[^ -~]/g, '?')
    .trim();
}

function cutLong(word: string): string[] {
  return word.match(new RegExp(`.{1,${lineLength}}`, 'g')) ?? [];
}
