import type { SectionPlan } from '../../die/section-plan';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { sayLength } from '../../say';

/** Corners that no joint reaches, and sections that need a wheel finer than one can be dressed. */
export const sectionFindings = (plans: readonly SectionPlan[]): readonly Finding[] =>
  plans.flatMap((plan) => [...unreached(plan), ...finestWheel(plan)]);

function unreached({ memberId, unreached: places }: SectionPlan): readonly Finding[] {
  return places.map(({ at }) =>
    findingOf({
      code: 'section-joint',
      weight: 'decide',
      title: 'No joint leads from this corner',
      message: 'Every straight way to the edge of the block runs into another opening or joint.',
      place: { ...at, reach: 5 },
      memberId,
      cures: [
        { kind: 'other', say: 'Move the openings to different blocks, or leave the corner to the wire.' },
      ],
    }),
  );
}

/** Common practice: a grinding wheel holds a dressed edge radius down to about a tenth of a millimetre. */
const finest = 0.1;

function finestWheel({ memberId, sections }: SectionPlan): readonly Finding[] {
  const radii = sections.flatMap(({ section }) => section.wheelRadius ?? []);
  const least = Math.min(...radii);
  if (!(least < finest)) return [];
  return [
    findingOf({
      code: 'section-wheel',
      weight: 'decide',
      title: 'A radius finer than a wheel holds',
      message: `A section has a hollow radius of ${sayLength(least)}; a dressed wheel holds about ${sayLength(finest)} (common practice).`,
      memberId,
      numbers: [{ label: 'radius', value: least, kind: 'length' }],
      cures: [{ kind: 'other', say: 'Agree a sharp corner or a larger radius, or finish it by sinking.' }],
    }),
  ];
}
