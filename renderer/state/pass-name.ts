/** What a pass is called: the rough cut first, then skims from one up. */
export const passName = (pass: number): string => (pass === 0 ? 'Rough cut' : `Skim ${pass}`);

const numerals = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;

/** The passes of a job in words, e.g. "one rough and two skims". */
export function passesInWords(count: number): string {
  const skims = count - 1;
  if (skims === 0) return 'one rough, no skim';
  return `one rough and ${numerals[skims] ?? skims} skim${skims === 1 ? '' : 's'}`;
}
