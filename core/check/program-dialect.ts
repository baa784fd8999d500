/** What a program's text leaves to be known before it can be read, as a shop's style has it. */
export interface ProgramDialect {
  /** Digits of a number without a point that come after it; null where such a number counts whole mm or inches. */
  readonly impliedDecimals: {
    readonly mm: number;
    readonly inch: number;
    readonly feedMm: number;
    readonly feedInch: number;
  } | null;
  /** Letter of the word that names an entry of the offset table. */
  readonly offsetLetter: 'D' | 'H';
  /** Whether the program says its feeds, or leaves them to the control. */
  readonly saysFeeds: boolean;
  /** A shop's own texts that move no axis: passed over. */
  readonly ownWords: readonly string[];
}

/** Numbers with a point where it is needed, offsets by D: ISO 6983-1 and RS274/NGC. */
export const plainDialect: ProgramDialect = {
  impliedDecimals: null,
  offsetLetter: 'D',
  saysFeeds: true,
  ownWords: [],
};
