import type { Plan } from './plan';

/**
 * Says what is being worked on and how much of the whole is done, 0 to 1; before the proofs, the plan as far as it goes
 * without them.
 */
export type Progress = (step: string, fraction: number, unproved?: Plan) => void;
