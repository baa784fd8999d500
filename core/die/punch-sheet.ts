import type { Region } from '../geometry/contour';
import type { Width } from '../geometry/width';
import type { CutForce } from './cut-force';
import { punchStrength, type EndCondition, type PunchStrength } from './punch-strength';

export interface PunchChoice {
  readonly freeLength: number;
  readonly end: EndCondition;
  readonly permittedStress: number;
}

/** How strong one punch is. */
export interface PunchSheet {
  readonly memberId: string;
  readonly contourId: string;
  /** Force on it with dull edges, N; null where the stock has no strength. */
  readonly force: number | null;
  readonly strength: PunchStrength | null;
  /** Its narrowest place; null where none is narrow enough to be looked at, or no two of its sides face each other. */
  readonly narrowest: Width | null;
}

/** `region` is the punch's section, its openings clockwise. */
export function punchSheet(
  memberId: string,
  region: Region,
  cut: CutForce,
  dull: number,
  choice: PunchChoice,
  narrowestOf: (region: Region) => Width | null,
): PunchSheet {
  const force = cut.force === null ? null : cut.force * (1 + dull);
  return {
    memberId,
    contourId: cut.contourId,
    force,
    strength: force === null ? null : punchStrength({ ...choice, region, force }),
    narrowest: narrowestOf(region),
  };
}
