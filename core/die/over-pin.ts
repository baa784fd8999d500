import * as portable from '../geometry/portable-math';

/** Diameters of common gauge pins, mm (ISO 2338 series), thickest first. */
export const gaugePins = [12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1] as const;

/**
 * A flat face that rises from a surface plate, measured with a pin in the nook between face and plate, or on a stack
 * of gauge blocks in it.
 */
export interface FaceSetup {
  /** From the datum face, square to the plate, to the corner where the face meets the plate, mm. */
  readonly toCorner: number;
  /** Angle between plate and face on the pin's side, radians: π/2 for a face square to the plate. */
  readonly nook: number;
  /** Length of the face, mm. */
  readonly faceLength: number;
}

export interface OverPin {
  readonly pin: number;
  /** Height of the gauge blocks under the pin, mm; 0: it lies on the plate. */
  readonly stack: number;
  /** From the datum face over the pin, mm. */
  readonly overPin: number;
  /** How far up the face the pin touches it, mm. */
  readonly contact: number;
}

/**
 * Measure over a pin of diameter d on blocks of height H: x = X + (d/2 + (H + d/2)·cos ψ)/sin ψ + d/2. On the plate
 * itself (H = 0) that is X + d/2·(1 + cot(ψ/2)), the roller formula of the shop handbooks. The thickest pin that
 * touches the face in its lower half is taken, raised to the middle of the face where there is room, in steps of a
 * half mm. Null where not even the thinnest pin touches the face.
 */
export function overPin({ toCorner, nook, faceLength }: FaceSetup): OverPin | null {
  const pin = gaugePins.find((diameter) => diameter / 2 / portable.tan(nook / 2) <= faceLength / 2);
  if (pin === undefined) return null;
  const radius = pin / 2;
  const wanted = (faceLength / 2) * portable.sin(nook) - radius * (1 + portable.cos(nook));
  const stack = wanted < leastStack ? 0 : Math.floor(wanted / stackStep) * stackStep;
  return {
    pin,
    stack,
    overPin: toCorner + (radius + (stack + radius) * portable.cos(nook)) / portable.sin(nook) + radius,
    contact: (stack + radius * (1 + portable.cos(nook))) / portable.sin(nook),
  };
}

const stackStep = 0.5;
/** The thinnest block that is handled gladly, mm. */
const leastStack = 1;
