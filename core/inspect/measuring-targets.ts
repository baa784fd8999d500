import type { Region } from '../geometry/contour';
import { reversedContour } from '../geometry/contour-measures';
import type { Plan } from '../plan';
import { membersOf } from '../wire/members-of';

/** Something that measured points can be compared with. */
export interface MeasuringTarget {
  readonly id: string;
  readonly name: string;
  readonly profile: Region;
  readonly material: 'inside' | 'outside';
}

/** The drawn outline, its holes in it, and the designed contour of every member that has one. */
export function measuringTargets(plan: Plan): readonly MeasuringTarget[] {
  const outline = plan.drawing.contours.map(({ contour, depth }) =>
    depth % 2 === 0 ? contour : reversedContour(contour),
  );
  const members = membersOf(plan).filter(({ designed }) => designed.length > 0);
  return [
    { id: partTarget, name: 'the part as drawn', profile: outline, material: 'inside' },
    ...members.map(({ id, role, part, contourId, designed }): MeasuringTarget => ({
      id,
      name: `${part === 'stripper' || part === 'retainer' ? part : role} of contour ${contourId}`,
      profile: designed,
      material: role === 'die' ? 'outside' : 'inside',
    })),
  ];
}

export const partTarget = 'part';
