/**
 * How far a number of a table can be trusted: printed in the named book or standard, recalled from it, what shops use,
 * or typed by the user.
 */
export type SourceStatus = 'published' | 'from memory' | 'common practice' | 'typed';

/** A number of the trade with where it comes from: shown wherever the number is. */
export interface Sourced {
  readonly value: number;
  readonly source: string;
  readonly status: SourceStatus;
}

export const published = (value: number, source: string): Sourced => ({
  value,
  source,
  status: 'published',
});

export const fromMemory = (value: number, source: string): Sourced => ({
  value,
  source,
  status: 'from memory',
});

export const commonPractice = (value: number, source: string): Sourced => ({
  value,
  source,
  status: 'common practice',
});

/** "Groover, …, table 20.1" or, where the book was not at hand, "Machinery's Handbook, from memory". */
export const saySource = ({ source, status }: Pick<Sourced, 'source' | 'status'>): string =>
  status === 'published' || source === status ? source : `${source}, ${status}`;
