import type { ProgramStyle } from './program-style';

/**
 * Words of ISO 6983-1 only, everything written out in every block. Five decimals in mm and six in inch are a tenth of
 * the finest steps that machines make (0.1 µm, 0.00001 in; common practice), so that rounding is never what a part is
 * off by, and contours for a control's own offset need no more room than half a micrometre (compensation-room.ts).
 */
export const neutralStyle: ProgramStyle = {
  name: 'neutral',
  numbers: { mmDecimals: 5, inchDecimals: 6, point: 'always', trailingZeros: true, leadingZero: true },
  twoDigitWords: true,
  leaveOut: 'nothing',
  spaces: true,
  // RS274/NGC (NIST IR 6556) reads line numbers up to 99999.
  lineNumbers: { first: 1, step: 1, digits: 5, padded: false },
  lineEnd: 'LF',
  // With number and words a line stays far below the 256 characters of RS274/NGC.
  comments: { signs: 'brackets', longest: 70, upperCase: true },
  arcs: 'centre',
  // An inch is 25 times as coarse: two more decimals keep a slow feed from becoming zero.
  feed: { mmDecimals: 2, inchDecimals: 4 },
  offsets: { letter: 'D', first: 1, digits: 1 },
  unitWords: 'G70 and G71',
  before: ['%'],
  start: ['{unit}', 'G17 G40 G90'],
  thread: ['M00'],
  cutWire: ['M00'],
  end: ['M30'],
  after: [],
  ownWords: [],
};

/** For RS274/NGC interpreters (NIST IR 6556), which choose the unit by G20 and G21. */
export const rs274Style: ProgramStyle = {
  ...neutralStyle,
  name: 'RS274 dialect',
  unitWords: 'G20 and G21',
  after: ['%'],
};
