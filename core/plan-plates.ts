import { memberFit } from './check/member-fit';
import { plateFindings } from './check/die-set/plate-findings';
import type { PlateSettings } from './die-set-settings';
import { fitAllowance } from './die/fit-allowance';
import { plateOpening } from './die/plate-opening';
import type { Finding } from './finding';
import { memberId } from './member-id';
import { fitOnSize, sizeOf } from './fit-on-size';
import { planMember } from './plan-member';
import type { PairPlan } from './plan-pair';
import type { Pair, PlateName, PlateOpening, Site } from './plan';
import { rollingPath } from './wire/corner-extension';
import type { CutWishes } from './wire/cut-wishes';
import { reachOf, type WirePass } from './wire/pass-offsets';
import type { CutChoices } from './wire/plan-cuts';

/** One plate of the job and what is wanted of its cuts. */
export interface PlateQuery {
  readonly plate: PlateName;
  readonly fit: PlateSettings['fit'];
  readonly corners: PlateSettings['corners'];
  readonly wireDiameter: number;
  readonly passes: readonly WirePass[];
  readonly wishes: CutWishes;
  readonly site: Site;
  readonly choices: CutChoices;
}

export interface PlannedPlate {
  readonly opening: PlateOpening;
  readonly findings: readonly Finding[];
}

/**
 * The opening of a plate for one punch: designed from the punch as the wire leaves it, cut like a die, and held against the punch as cut.
 * Nothing is cut for a punch without an outline, or with a fit that no table has.
 */
export function planPlate(pair: Pair, clearance: number, query: PlateQuery): PlannedPlate {
  const { plate, wireDiameter, passes } = query;
  const { punch, contourId, use } = pair;
  const size = punch.designed.length === 0 ? 1 : sizeOf(punch.designed);
  const allowed = fitAllowance(fitOnSize(query.fit, size), 'plug');
  const relieved =
    query.corners === 'relieved'
      ? { reach: reachOf(wireDiameter, passes), largestOffset: largestOffset(wireDiameter, passes) }
      : null;
  const { member, findings } = planMember({
    id: memberId(use, contourId, plate),
    role: 'die',
    part: plate,
    contourId,
    givesSize: false,
    designed: allowed.ok ? plateOpening(punch.asCut, allowed.value.gap, relieved) : [],
    corners: [],
    sharp: rollingPath,
    wireDiameter,
    passes,
    wishes: query.wishes,
    site: query.site,
    choices: query.choices,
    relief: null,
    taper: 0,
  });
  if (!allowed.ok) {
    const opening = { member, gap: 0, reason: allowed.problem.what, fit: null };
    return { opening, findings: plateFindings.unknown(member.id, contourId, plate, allowed.problem) };
  }
  const { gap, reason } = allowed.value;
  const opening = { member, gap, reason, fit: memberFit(punch.asCut, member.asCut) };
  const own = plateFindings.of({ plate, contourId, opening, allowance: allowed.value, clearance });
  return { opening, findings: [...findings, ...own] };
}

/** Every pass has to get into a pocket, the rough one with its stock first of all. */
const largestOffset = (wireDiameter: number, passes: readonly WirePass[]): number =>
  Math.max(...passes.map(({ sparkGap, stockLeft }) => wireDiameter / 2 + sparkGap + stockLeft));

/** The pair with the openings that fit its punch. */
export const withPlates = ({ pair, findings }: PairPlan, planned: readonly PlannedPlate[]): PairPlan =>
  planned.length === 0
    ? { pair, findings }
    : {
        pair: { ...pair, plates: planned.map(({ opening }) => opening) },
        findings: [...findings, ...planned.flatMap((plate) => plate.findings)],
      };
