import { tolerance } from '../geometry/tolerance';
import type { Proof } from '../plan';

/** The proof of a member before anything has been proved. */
export const unproved: Proof = {
  passed: false,
  gouge: 0,
  gougeAt: null,
  remainder: 0,
  remainderAt: null,
  chord: tolerance.proofChord,
  allowed: tolerance.proofGouge,
};
