import { neutralStyle } from './neutral-style';
import type { ProgramStyle } from './program-style';

/**
 * A style that differs from the neutral one wherever it can, to be copied and changed: samples/ has it as a file with
 * a comment beside every value. Made up, and no maker's.
 */
export const exampleStyle: ProgramStyle = {
  ...neutralStyle,
  name: 'workshop example',
  numbers: { mmDecimals: 4, inchDecimals: 5, point: 'always', trailingZeros: false, leadingZero: true },
  twoDigitWords: false,
  leaveOut: 'motion words and coordinates',
  lineNumbers: { first: 10, step: 10, digits: 5, padded: false },
  comments: { signs: 'semicolon', longest: 60, upperCase: false },
  arcs: 'radius',
  offsets: { letter: 'D', first: 11, digits: 2 },
  unitWords: 'G20 and G21',
  start: ['{unit}', 'G17 G40 G90', 'G94'],
  thread: ['M00'],
  cutWire: ['M00'],
  end: ['G40', 'M30'],
  after: ['%'],
};
