import type { Finding } from '../../../core/finding';

/** A finding with only what a test says about it. */
export const smallFinding = (parts: Partial<Finding> & Pick<Finding, 'key' | 'weight'>): Finding => ({
  code: 'inside-corner',
  title: `Finding ${parts.key}`,
  message: 'The wire leaves stock here.',
  place: null,
  contourId: null,
  memberId: null,
  numbers: [],
  cures: [],
  ...parts,
});
