import { done, failed, type Result } from '../problem';
import * as portable from '../geometry/portable-math';

/** What a tilted wire needs to cut punch and die out of one block. mm. */
export interface SingleBlockQuery {
  /** Width of the cut square to the wire: wire diameter plus two spark gaps. */
  readonly kerf: number;
  readonly height: number;
  /** Clearance per side between the die's edge and the punch's edge. */
  readonly clearance: number;
}

export interface SingleBlock {
  /** Tilt of the wire from vertical, radians. */
  readonly tilt: number;
  /** Half the cut's width in a horizontal plane: from the wire's centre to either member, mm. */
  readonly halfKerf: number;
  /** How much farther out the wire runs at one face than at the other: h·tan θ, mm. */
  readonly drift: number;
  /** Change of clearance, mm: for 0.01° more tilt, and for a spark gap 0.01 mm wider on each side. */
  readonly perHundredthDegree: number;
  readonly perHundredthGap: number;
}

/**
 * Tilt of the wire so that the die's edge at its narrow face and the punch's edge at its wide face, the opposite one,
 * leave the wanted clearance: c = K/cos θ − h·tan θ, so h·sin θ + c·cos θ = K and
 * θ = asin(K/√(h² + c²)) − atan2(c, h). There is one for c < K ≤ √(h² + c²). Exact geometry.
 * Example: K 0.3, h 20, c 0.025: 0.78785°.
 */
export function singleBlock({ kerf, height, clearance }: SingleBlockQuery): Result<SingleBlock> {
  if (!(clearance < kerf)) {
    return failed(
      'single-block-clearance',
      `A clearance of ${clearance} mm per side is as wide as the cut itself (${kerf} mm)`,
      'one block',
      'Cut punch and die from blocks of their own: a straight wire leaves at least this clearance.',
    );
  }
  const reach = Math.hypot(height, clearance);
  if (!(kerf <= reach)) {
    return failed(
      'single-block-height',
      `A block ${height} mm high is too low for a cut of ${kerf} mm`,
      'one block',
      'Take a higher block, or a thinner wire.',
    );
  }
  const tilt = portable.asin(kerf / reach) - portable.atan2(clearance, height);
  const cos = portable.cos(tilt);
  return done({
    tilt,
    halfKerf: kerf / (2 * cos),
    drift: height * portable.tan(tilt),
    perHundredthDegree: ((kerf * portable.sin(tilt) - height) / cos ** 2) * (Math.PI / 180) * 0.01,
    perHundredthGap: (2 * 0.01) / cos,
  });
}

/** Clearance for a tilt: what θ, K and h leave, mm. Negative: punch and die overlap. */
export const singleBlockClearance = (kerf: number, height: number, tilt: number): number =>
  kerf / portable.cos(tilt) - height * portable.tan(tilt);

/** Clearance after so much was ground off both faces: c + (g_die + g_punch)·tan θ, mm. */
export const clearanceAfterRegrinds = (
  clearance: number,
  dieGround: number,
  punchGround: number,
  tilt: number,
) => clearance + (dieGround + punchGround) * portable.tan(tilt);
