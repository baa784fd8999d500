import { memberFit } from './check/member-fit';
import { tightPlaces } from './check/tight-places';
import { unproved } from './check/unproved';
import { oneBlock } from './die/one-block';
import type { DrawingContour } from './drawing/drawing';
import type { Finding } from './finding';
import type { Region } from './geometry/contour';
import { memberId } from './member-id';
import { memberRelief } from './member-relief';
import type { PairPlan } from './plan-pair';
import type { Cut, Member, MemberRole, Pair } from './plan';
import { leaningCut } from './wire/leaning-cut';
import type { ChordWishes } from './wire/taper-chords';

export interface OneBlockCutQuery {
  readonly wireDiameter: number;
  /** Of the one pass, mm and mm/min. */
  readonly sparkGap: number;
  readonly feed: number;
  readonly height: number;
  readonly clearance: number;
  readonly tabLength: number;
  readonly chords: ChordWishes;
  readonly sizeShift: number;
}

/**
 * Punch and die of one contour out of one block by one leaning cut, which is the die's: its edge at the face where the
 * cut is narrow, the punch's at the other one. Where the block does not allow it there are no members to speak of, and
 * the die set's findings say why.
 */
export function planOneBlock(
  { id: contourId, contour: drawn }: DrawingContour,
  use: 'blank' | 'pierce',
  query: OneBlockCutQuery,
): PairPlan {
  const { wireDiameter, sparkGap, feed, height, clearance, sizeShift } = query;
  const kerf = wireDiameter + 2 * sparkGap;
  const made = oneBlock({ contourId, use, contour: drawn, kerf, height, clearance });
  const name = (role: MemberRole) => memberId(use, contourId, role);
  const pairOf = (die: Member, punch: Member): Pair => ({
    contourId,
    use,
    gap: clearance,
    sizeShift,
    isOneBlock: true,
    die,
    punch,
    plates: [],
    fit: memberFit(punch.asCut, die.asCut),
  });
  const bare = (role: MemberRole, designed: Region = []): Member => ({
    ...{ id: name(role), role, part: role, contourId, designed, asCut: designed },
    ...{ remainders: [], cuts: [], proof: unproved },
  });
  if (!made.ok) return { pair: pairOf(bare('die'), bare('punch')), findings: [] };
  const { solved, contours } = made.value;
  const { 'die edge': narrow, 'punch edge': wide } = contours;
  // The member that gives the size is the drawing, but for corners that the wire rounds.
  const gives = use === 'blank' ? 'die' : 'punch';
  const asCut = gives === 'die' ? narrow.die : wide.punch;
  const tight = tightPlaces({
    ...{ memberId: name(gives), contourId, role: gives, designed: [drawn], asCut },
    ...{ reach: solved.halfKerf, wireDiameter, sparkGap, corners: [], givesSize: true },
  });
  const cuts = narrow.wire.map((loop, k) =>
    leaningCut({
      id: `${name('die')}-${k + 1}`,
      loop,
      offset: solved.halfKerf,
      feed,
      tabLength: query.tabLength,
      kerf,
    }),
  );
  const designedDie = use === 'blank' ? [drawn] : narrow.die;
  const relieved = memberRelief({
    memberId: name('die'),
    contourId,
    plan: {
      ...{ kind: 'one tapered cut', land: 0, height, angle: solved.tilt, corners: 'conical' },
      chords: query.chords,
    },
    designed: designedDie,
    planned: cuts,
    cuttingRadius: kerf / 2,
    feed,
    // The die set's findings say it of the tilt itself.
    largestLean: Infinity,
  });
  const die: Member = {
    ...bare('die', designedDie),
    asCut: narrow.die,
    remainders: gives === 'die' ? tight.remainders : [],
    cuts: relieved.cuts.map(threadedLeaning),
    ...(relieved.relief ? { relief: relieved.relief } : {}),
  };
  const punch: Member = {
    ...bare('punch', use === 'blank' ? wide.punch : [drawn]),
    asCut: wide.punch,
    remainders: gives === 'punch' ? tight.remainders : [],
  };
  const findings: readonly Finding[] = [...tight.findings, ...relieved.findings];
  return { pair: pairOf(die, punch), findings };
}

/** The hole leans as the wire does where it begins. */
function threadedLeaning(cut: Cut): Cut {
  const run = cut.passes[0]?.main[0];
  const [lower, upper] = [run?.cut[0], run?.upper?.cut[0]];
  if (!lower || !upper) return cut;
  const lean = { x: upper.x - lower.x, y: upper.y - lower.y };
  return { ...cut, starts: cut.starts.map((start) => start && { ...start, lean }) };
}
