import type { Finding } from '../../core/finding';

/** The number that a finding carries in the review list and on the canvas alike: its place in the list, from 1. */
export const findingRanks = (findings: readonly Finding[]): ReadonlyMap<string, number> =>
  new Map(findings.map((finding, index) => [finding.key, index + 1]));
