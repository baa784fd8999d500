import type { ProgramStyle } from '../program-style';

/**
 * Text as program comments, one a line: ASCII, nothing inside that would end the comment and turn the rest into
 * words, wrapped between words. Empty text gives no comment.
 */
export function programComment(text: string, style: ProgramStyle['comments']): string[] {
  const ascii = plainText(text);
  const plain = style.upperCase ? ascii.toUpperCase() : ascii;
  const lines: string[] = [];
  let line = '';
  for (const word of plain.split(' ').flatMap((one) => cutLong(one, style.longest))) {
    if (line !== '' && line.length + 1 + word.length > style.longest) {
      lines.push(line);
      line = '';
    }
    line = line === '' ? word : `${line} ${word}`;
  }
  if (line !== '') lines.push(line);
  return lines.map((said) => (style.signs === 'brackets' ? `(${said})` : `; ${said}`));
}

/**
 * ASCII that says the same: accents dropped, our signs spelled out, brackets as hyphens whatever the style's comments
 * stand in, anything else a question mark. Taken apart first: the one sign "⒜" holds two brackets.
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

function cutLong(word: string, longest: number): string[] {
  return word.match(new RegExp(`.{1,${longest}}`, 'g')) ?? [];
}
