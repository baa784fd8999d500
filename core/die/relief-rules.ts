import { z } from 'zod';
import { tolerance } from '../geometry/tolerance';
import { done, failed, type Result } from '../problem';
import { radians } from '../units';

/** mm; no block is higher. */
const positive = z.number().positive().max(10_000);

/** No machine leans its wire more (common practice). */
export const largestAngleDeg = 45;

/** The relief of a die opening: how it widens below the cutting edge, so that slugs fall free. mm. */
export const reliefShape = z.strictObject({
  /**
   * No relief; the whole opening tapered from its cutting edge, in the passes that cut it; or a straight land, cut
   * first, and the relief below it as a cut of its own.
   */
  kind: z.enum(['none', 'one tapered cut', 'land and relief']),
  /** Height of the straight land below the cutting edge. */
  land: positive,
  /** Per side, from the vertical, in degrees as people type it. */
  angleDeg: positive.max(largestAngleDeg),
  /** Corner radii that grow with the opening, or that are the same at both faces. */
  corners: z.enum(['conical', 'constant radius']),
  /** Whether the control runs arcs of two radii at once, or gets chords instead. */
  arcs: z.enum(['chords', 'circular']),
  /** How far a chord may be from its arc. */
  chordTolerance: positive.min(tolerance.finestChord),
  /** What is ground off the face at a time. */
  perGrind: positive,
});

export type ReliefSettings = z.infer<typeof reliefShape>;

/**
 * Off; land 3 mm (1/8 in) and 0.5° per side, within Groover's 0.25 to 1.5°; 0.1 mm a regrind (common practice). No
 * control is trusted with arcs of two radii at once.
 */
export const newRelief: ReliefSettings = {
  kind: 'none',
  land: 3,
  angleDeg: 0.5,
  corners: 'conical',
  arcs: 'chords',
  chordTolerance: tolerance.leaningChord,
  perGrind: 0.1,
};

export const reliefSchema = reliefShape.default(newRelief);

/** The angle that every pass of a die leans by, radians; 0 where its opening is cut upright. */
export const taperAngle = ({ kind, angleDeg }: ReliefSettings): number =>
  kind === 'one tapered cut' ? radians(angleDeg) : 0;

/** A relief's angle as a person types it, degrees per side: "0.5", "0,5°". */
export function readReliefAngle(text: string): Result<number> {
  const angle = Number(text.trim().replace(/\s*°$/, '').replace(',', '.'));
  return angle > 0 && angle <= largestAngleDeg
    ? done(angle)
    : failed(
        'relief-angle',
        `"${text.trim()}" is no angle of a relief`,
        '',
        `Type degrees per side, more than 0 and up to ${largestAngleDeg}, such as 0.5.`,
      );
}
