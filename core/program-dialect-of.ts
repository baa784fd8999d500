import type { ProgramDialect } from './check/program-dialect';
import type { ProgramStyle } from './program-style';

/** What a reader has to know of a style to read what is written in it. */
export function programDialectOf({ numbers, feed, offsets, ownWords }: ProgramStyle): ProgramDialect {
  return {
    impliedDecimals:
      numbers.point === 'implied'
        ? {
            mm: numbers.mmDecimals,
            inch: numbers.inchDecimals,
            feedMm: feed?.mmDecimals ?? 0,
            feedInch: feed?.inchDecimals ?? 0,
          }
        : null,
    offsetLetter: offsets.letter,
    saysFeeds: feed !== null,
    ownWords,
  };
}
