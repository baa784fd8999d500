import fc from 'fast-check';
import { neutralStyle } from '../../core/neutral-style';
import type { ProgramStyle } from '../../core/program-style';

/** Any way of writing numbers and words; around the steps stand the words of the neutral style. */
export const anyStyle: fc.Arbitrary<ProgramStyle> = fc
  .record({
    numbers: fc.record({
      mmDecimals: fc.integer({ min: 3, max: 6 }),
      inchDecimals: fc.integer({ min: 4, max: 7 }),
      point: fc.constantFrom('always', 'where needed', 'implied'),
      trailingZeros: fc.boolean(),
      leadingZero: fc.boolean(),
    }),
    twoDigitWords: fc.boolean(),
    leaveOut: fc.constantFrom('nothing', 'motion words', 'motion words and coordinates'),
    spaces: fc.boolean(),
    lineNumbers: fc.option(
      fc.record({
        first: fc.integer({ min: 0, max: 999 }),
        step: fc.integer({ min: 1, max: 100 }),
        digits: fc.integer({ min: 3, max: 8 }),
        padded: fc.boolean(),
      }),
    ),
    lineEnd: fc.constantFrom('LF', 'CRLF'),
    comments: fc.record({
      signs: fc.constantFrom('brackets', 'semicolon'),
      longest: fc.integer({ min: 20, max: 200 }),
      upperCase: fc.boolean(),
    }),
    arcs: fc.constantFrom('centre', 'radius'),
    feed: fc.option(
      fc.record({ mmDecimals: fc.integer({ min: 0, max: 4 }), inchDecimals: fc.integer({ min: 1, max: 6 }) }),
    ),
    offsets: fc.record({
      letter: fc.constantFrom('D', 'H'),
      first: fc.integer({ min: 0, max: 9000 }),
      digits: fc.integer({ min: 1, max: 4 }),
    }),
    unitWords: fc.constantFrom('G70 and G71', 'G20 and G21'),
  })
  .map((parts) => ({ ...neutralStyle, ...parts, name: 'any' }));
