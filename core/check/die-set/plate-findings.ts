import type { FitAllowance } from '../../die/fit-allowance';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { tolerance } from '../../geometry/tolerance';
import type { PlateName, PlateOpening } from '../../plan';
import type { Problem } from '../../problem';
import { sayGap, sayLength } from '../../say';

export interface PlateChecks {
  readonly plate: PlateName;
  readonly contourId: string;
  readonly opening: PlateOpening;
  readonly allowance: FitAllowance;
  /** Between punch and die, mm per side. */
  readonly clearance: number;
}

/** What is wrong with an opening of stripper or retainer: the punch binds, sticks, or is not guided. */
export const plateFindings = {
  of: (checks: PlateChecks): readonly Finding[] => [...binds(checks), ...sticks(checks), ...loose(checks)],
  /** A fit that no table has. */
  unknown: (memberId: string, contourId: string, plate: PlateName, problem: Problem): readonly Finding[] => [
    findingOf({
      code: 'plate-fit-unknown',
      weight: 'stop',
      title: `The fit of the ${plate} is in no table`,
      message: `${problem.what}. ${problem.whatToDo}`,
      memberId,
      contourId,
    }),
  ],
};

/** As cut the wire leaves fillets in the opening's corners, where a sharper punch binds: exact distance. */
function binds({ plate, contourId, opening }: PlateChecks): readonly Finding[] {
  const { fit, gap, member } = opening;
  if (!fit || fit.least >= gap - tolerance.uneven) return [];
  const isStop = gap >= 0 && fit.least < 0;
  return [
    findingOf({
      code: 'plate-binds',
      weight: isStop ? 'stop' : 'decide',
      title: `The punch binds in the ${plate}`,
      message:
        `As cut the gap is ${sayGap(fit.least)} here instead of ${sayGap(gap)} per side: the wire leaves a fillet in ` +
        'the corner of the opening.',
      place: { ...fit.leastAt, reach: 2 },
      memberId: member.id,
      contourId,
      numbers: [
        { label: 'least gap', value: fit.least, kind: 'length' },
        { label: 'wanted gap', value: gap, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Relieve the corners of the opening, or round the punch.' }],
    }),
  ];
}

function sticks({ plate, contourId, opening, allowance }: PlateChecks): readonly Finding[] {
  if (plate !== 'stripper' || allowance.kind === 'slip') return [];
  return [
    findingOf({
      code: 'plate-fit',
      weight: 'decide',
      title: 'The punch sticks in the stripper',
      message: `The fit is a ${allowance.kind} fit (${allowance.reason}); a punch has to run freely in the stripper.`,
      memberId: opening.member.id,
      contourId,
      numbers: [{ label: 'least gap', value: allowance.leastGap, kind: 'length' }],
      cures: [{ kind: 'other', say: 'Type an allowance above zero, or a class such as H7/f7.' }],
    }),
  ];
}

/** Common practice: a stripper that guides does so more closely than the die lets the punch wander. */
function loose({ plate, contourId, opening, allowance, clearance }: PlateChecks): readonly Finding[] {
  if (plate !== 'stripper' || allowance.greatestGap <= clearance) return [];
  return [
    findingOf({
      code: 'plate-fit',
      weight: 'note',
      title: 'The stripper does not guide the punch',
      message:
        `The gap may be ${sayLength(allowance.greatestGap)} per side (${allowance.reason}), more than the clearance of ` +
        `${sayLength(clearance)}: the punch meets the die before the stripper (common practice: less than the clearance).`,
      memberId: opening.member.id,
      contourId,
      numbers: [{ label: 'greatest gap', value: allowance.greatestGap, kind: 'length' }],
    }),
  ];
}
