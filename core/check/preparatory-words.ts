import { done, failed, type Result } from '../problem';
import type { ProgramBlock } from './program-blocks';

/** What the preparatory words (G) of a block ask for; null where the block says nothing about it. */
export interface Preparation {
  readonly motion: 0 | 1 | 2 | 3 | null;
  readonly unit: 'mm' | 'inch' | null;
  readonly distances: 'absolute' | 'incremental' | null;
  readonly side: 'off' | 'left' | 'right' | null;
  /** G54 to G59: the place of the zero that the operator set. */
  readonly zero: number | null;
  /** G92: the numbers name the present place instead of moving to one. */
  readonly namesPlace: boolean;
  /** G04: the block waits, its numbers are a time. */
  readonly waits: boolean;
}

const nothing: Preparation = {
  motion: null,
  unit: null,
  distances: null,
  side: null,
  zero: null,
  namesPlace: false,
  waits: false,
};

/**
 * G words by ISO 6983-1 (G70/G71 for the unit; G20/G21 mean the same in RS274/NGC, which has G61 besides). Only what
 * leaves no doubt about the path: other planes, drilling cycles, feed per turn and the like are left out.
 */
const meanings: ReadonlyMap<number, Partial<Preparation>> = new Map<number, Partial<Preparation>>([
  [0, { motion: 0 }],
  [1, { motion: 1 }],
  [2, { motion: 2 }],
  [3, { motion: 3 }],
  [4, { waits: true }],
  [17, {}],
  [20, { unit: 'inch' }],
  [21, { unit: 'mm' }],
  [40, { side: 'off' }],
  [41, { side: 'left' }],
  [42, { side: 'right' }],
  [61, {}],
  [70, { unit: 'inch' }],
  [71, { unit: 'mm' }],
  [90, { distances: 'absolute' }],
  [91, { distances: 'incremental' }],
  [92, { namesPlace: true }],
  [94, {}],
  ...[54, 55, 56, 57, 58, 59].map((zero): [number, Partial<Preparation>] => [zero, { zero }]),
]);

/** A block's G words taken together; a problem where one is not known or two contradict each other. */
export function preparationOf(block: ProgramBlock): Result<Preparation> {
  let all = nothing;
  for (const { letter, value } of block.words) {
    if (letter !== 'G') continue;
    const meaning = meanings.get(value);
    if (!meaning) {
      return failed(
        'program-g-word',
        `The program says G${value}, whose path this check does not know`,
        `line ${block.line}`,
        'Leave the word out of the program, or name it among the words of the program style that move nothing.',
      );
    }
    for (const key of Object.keys(meaning) as (keyof Preparation)[]) {
      if (all[key] !== nothing[key] && all[key] !== meaning[key]) return contradiction(block.line);
    }
    all = { ...all, ...meaning };
  }
  if (all.motion !== null && (all.waits || all.namesPlace)) return contradiction(block.line);
  return done(all);
}

const contradiction = (line: number) =>
  failed(
    'program-contradicts',
    'The block says two things at once',
    `line ${line}`,
    'Write one word of each kind in a block.',
  );
