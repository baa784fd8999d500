import { passesOf, type Job } from '../../core/job';

/** What a pass is called: the rough cut first, then skims from one up. */
export const passName = (pass: number): string => (pass === 0 ? 'Rough cut' : `Skim ${pass}`);

const numerals = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;

/** The passes of a job in words, e.g. "one rough and two skims"; of each member where they differ in number. */
export function passesInWords(job: Pick<Job, 'passes' | 'punchPasses' | 'dieSet'>): string {
  const die = inWords(job.passes.length);
  const punch = inWords(passesOf(job, 'punch').length);
  return die === punch ? die : `${die} for the die, ${punch} for the punch`;
}

function inWords(count: number): string {
  const skims = count - 1;
  if (skims === 0) return 'one rough, no skim';
  return `one rough and ${numerals[skims] ?? skims} skim${skims === 1 ? '' : 's'}`;
}
