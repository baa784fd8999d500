import { newLead, noChoice, noStretch, type CutChoice, type StretchChoice } from '../../core/cut-settings';
import type { Region } from '../../core/geometry/contour';
import type { MemberRole, Site } from '../../core/plan';
import type { CutWishes } from '../../core/wire/cut-wishes';
import { passOffsets } from '../../core/wire/pass-offsets';
import { planCuts, type PlannedCut } from '../../core/wire/plan-cuts';
import { openSite } from '../../core/wire/site';

/** A rough and two skims with 0.25 mm wire: offsets 0.165, 0.151 and 0.145. */
const passes = [
  { sparkGap: 0.025, stockLeft: 0.015, feed: 4 },
  { sparkGap: 0.022, stockLeft: 0.004, feed: 6 },
  { sparkGap: 0.02, stockLeft: 0, feed: 8 },
];

/** Tabs of 2 mm, pieces kept, no overlap: plain numbers to check against. */
export const plainWishes: CutWishes = {
  ...newLead,
  tabRule: 'typed',
  slug: 'kept',
  overlap: 0,
  height: 25,
  wireDiameter: 0.25,
  sequence: 'part by part',
  lastDecimal: 0.00001,
};

export interface CutChanges {
  readonly wishes?: Partial<CutWishes>;
  readonly site?: Partial<Site>;
  readonly choice?: Partial<Omit<CutChoice, 'stretches'>> & {
    readonly stretches?: readonly Partial<StretchChoice>[];
  };
}

/** The cuts of one member, called m. */
export function cutsOf(designed: Region, role: MemberRole, changes: CutChanges = {}): readonly PlannedCut[] {
  const offsets = passOffsets(0.25, passes);
  if (!offsets.ok) throw new Error(offsets.problem.what);
  const { stretches = [], ...choice } = changes.choice ?? {};
  const whole: CutChoice = {
    ...noChoice,
    ...choice,
    stretches: stretches.map((one) => ({ ...noStretch, ...one })),
  };
  return planCuts(
    'm',
    designed,
    role,
    offsets.value,
    { ...plainWishes, ...changes.wishes },
    { ...openSite, ...changes.site },
    { 'm-1': whole },
  );
}

/** The largest of them. */
export function cutOf(designed: Region, role: MemberRole, changes: CutChanges = {}): PlannedCut {
  const [first] = cutsOf(designed, role, changes);
  if (!first) throw new Error('no cut');
  return first;
}
