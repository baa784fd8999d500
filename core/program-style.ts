import { z } from 'zod';

export const styleFormat = 'diewright-style';
export const styleVersion = 1;
export const styleFileEnding = '.diewright-style.json';

/** Words as the shop types them; printable ASCII, so that every control reads the same. */
const freeText = z
  .string()
  .max(80)
  .regex(/^[ -~]*$/, 'must be printable ASCII on one line');
const freeLines = z.array(freeText).max(20);

const numbersSchema = z.strictObject({
  /** Decimals of coordinates in mm and in inch. */
  mmDecimals: z.int().min(3).max(6),
  inchDecimals: z.int().min(4).max(7),
  /** Always: 10. or 10.00; where needed: 10; implied: the number counts steps of the last decimal. */
  point: z.enum(['always', 'where needed', 'implied']),
  /** 1.50000 or 1.5. */
  trailingZeros: z.boolean(),
  /** 0.5 or .5. */
  leadingZero: z.boolean(),
});

const lineNumbersSchema = z.strictObject({
  first: z.int().min(0).max(999),
  step: z.int().min(1).max(100),
  /** A number that would need more digits starts again at the first. */
  digits: z.int().min(3).max(8),
  /** N0010 or N10. */
  padded: z.boolean(),
});

const commentsSchema = z.strictObject({
  /** In round brackets, or from a semicolon to the end of the line. */
  signs: z.enum(['brackets', 'semicolon']),
  /** Longest text of one comment. */
  longest: z.int().min(20).max(200),
  upperCase: z.boolean(),
});

const offsetsSchema = z.strictObject({
  /** Letter of the word that names an entry of the offset table. */
  letter: z.enum(['D', 'H']),
  /** Entry of the rough cut; each skim has the next. */
  first: z.int().min(0).max(9000),
  /** D1 with 1 digit, D01 with 2. */
  digits: z.int().min(1).max(4),
});

/**
 * How a shop's control wants the same steps written: numbers, words and what stands around them. What decides where
 * the wire goes has its words from ISO 6983-1 or RS274/NGC; a shop's own text stands at the places meant for it.
 */
export const programStyleSchema = z.strictObject({
  name: z.string().min(1).max(80),
  numbers: numbersSchema,
  /** G01 or G1. */
  twoDigitWords: z.boolean(),
  /** What is left out of a block where the block before says the same. */
  leaveOut: z.enum(['nothing', 'motion words', 'motion words and coordinates']),
  /** "N1 G01 X1." or "N1G01X1.". */
  spaces: z.boolean(),
  lineNumbers: lineNumbersSchema.nullable(),
  lineEnd: z.enum(['LF', 'CRLF']),
  comments: commentsSchema,
  /** Centre: I and J from the arc's start. Radius: the R word, which ISO 6983 does not have. */
  arcs: z.enum(['centre', 'radius']),
  /** Null: the feed is left to the control. */
  feed: z.strictObject({ mmDecimals: z.int().min(0).max(4), inchDecimals: z.int().min(1).max(6) }).nullable(),
  offsets: offsetsSchema,
  /** For inch and mm, as ISO 6983-1 or as RS274/NGC has them. */
  unitWords: z.enum(['G70 and G71', 'G20 and G21']),
  /** Whole lines before everything, without number. */
  before: freeLines,
  /** Blocks before the first move; {unit} stands for the unit's word. */
  start: freeLines,
  /** Blocks at a start hole, where the wire is threaded. */
  thread: freeLines,
  /** Blocks where the wire is cut, before it goes to the next start hole. */
  cutWire: freeLines,
  /** Blocks after the last move. */
  end: freeLines,
  /** Whole lines after everything, without number. */
  after: freeLines,
  /** Words of these lines that only this control knows and that move no axis: the check of the program passes over them. */
  ownWords: z.array(freeText).max(50),
});

export type ProgramStyle = z.infer<typeof programStyleSchema>;
