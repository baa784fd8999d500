export interface Mutant {
  /** The line before and after. */
  readonly what: string;
  readonly text: string;
}

/**
 * Every program that differs from another by one slip: a digit changed (each digit once), a word dropped, an arc turned
 * round, the side of the offset swapped, a line dropped or exchanged with the next. Comments and line numbers stay.
 */
export function mutantsOf(text: string): readonly Mutant[] {
  const lines = text.split('\n');
  const mutants: Mutant[] = [];
  const add = (what: string, changed: readonly string[]) => mutants.push({ what, text: changed.join('\n') });
  lines.forEach((line, index) => {
    const [number, ...words] = line
      .replace(/\(.*?\)/g, '')
      .trim()
      .split(' ');
    if (number === undefined || !number.startsWith('N')) return;
    const replaced = (changed: string) => {
      add(`${line} -> ${changed}`, [...lines.slice(0, index), changed, ...lines.slice(index + 1)]);
    };
    words.forEach((word, at) => {
      const written = (other: string[]) =>
        replaced([number, ...words.slice(0, at), ...other, ...words.slice(at + 1)].join(' '));
      written([]);
      for (let digit = 1; digit < word.length; digit++) {
        const value = Number(word[digit]);
        if (!Number.isInteger(value) || word[digit] === ' ') continue;
        written([`${word.slice(0, digit)}${(value + 1) % 10}${word.slice(digit + 1)}`]);
      }
      if (word === 'G02') written(['G03']);
      if (word === 'G03') written(['G02']);
      if (word === 'G41') written(['G42']);
      if (word === 'G42') written(['G41']);
      if (/^[XYIJ]-?\d/.test(word))
        written([word.includes('-') ? word.replace('-', '') : `${word[0]}-${word.slice(1)}`]);
    });
    add(`${line} dropped`, [...lines.slice(0, index), ...lines.slice(index + 1)]);
    const next = lines[index + 1];
    if (next) add(`${line} after ${next}`, [...lines.slice(0, index), next, line, ...lines.slice(index + 2)]);
  });
  return mutants;
}
