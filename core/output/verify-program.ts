import { openSeal, type Seal } from './program-seal';

/** A block's program as the job gives it now, without its seal. */
export interface ExpectedProgram {
  readonly blockId: string;
  readonly text: string;
}

export interface ProgramVerdict {
  /** Whether the file may be run for this job. */
  readonly belongs: boolean;
  /** The block whose program it is; null where it is none of the job's. */
  readonly blockId: string | null;
  /** One sentence: what it is, and if it does not belong, why and what to do. */
  readonly say: string;
}

/**
 * Whether a program on disk still belongs to a job: it is sealed, nobody has changed it since, and the job is released
 * and gives the same program now. Where it does not, the seal tells whether drawing, job or program has changed.
 */
export function verifyProgram(
  text: string,
  expected: readonly ExpectedProgram[],
  now: Seal,
  isReleased: boolean,
): ProgramVerdict {
  const no = (say: string): ProgramVerdict => ({ belongs: false, blockId: null, say });
  const sealed = openSeal(text);
  if (!sealed) {
    return no(
      /\bDRAFT\b/i.test(text)
        ? 'This is a draft: it was written while findings were open. Settle them and export anew.'
        : 'It has no seal: it is not a released program of this job, or its last lines are missing. Export it anew.',
    );
  }
  if (!sealed.isWhole) {
    return no(
      'It was changed after it was released: its words are not those that were sealed. Export it anew.',
    );
  }
  const same = expected.find((program) => program.text.replaceAll('\r\n', '\n') === sealed.program);
  if (same && !isReleased) {
    return no('The job gives the same program, but has findings open now. Settle them before it is run.');
  }
  if (same) {
    const isSameJob = sealed.job === now.job;
    return {
      belongs: true,
      blockId: same.blockId,
      say: isSameJob
        ? 'It belongs to this job.'
        : 'It belongs to this job: the job was changed since, but in nothing that this program says.',
    };
  }
  if (sealed.drawing !== now.drawing) {
    return no('It was made from another drawing. Use the program that was exported with this job.');
  }
  if (sealed.job !== now.job) {
    return no('The job was changed after this program was released. Export it anew.');
  }
  return no('Another version of Diewright wrote it from the same job. Export it anew.');
}
