import type { MeasuredSection, SectionPlan } from '../die/section-plan';
import type { SectionMeasure } from '../die/section-measures';
import type { Job } from '../job';
import type { Plan } from '../plan';
import { sayAngle, sayLength } from '../say';
import { draftMark } from './cautions';

/** How each section is ground and measured, in plain text: sequence, wheel, stock, pins and gauge blocks. */
export function grindingNote(plan: Plan, job: Job): string {
  const plans = plan.dieSet.sections.filter(({ sections }) => sections.length > 0);
  const stock = job.dieSet.sections.stock;
  return [
    `Diewright: ${job.name}`,
    'Grinding note',
    ...(plan.released ? [] : [draftMark]),
    '',
    ...plans.flatMap((member) => memberLines(member, stock)),
    'Cautions',
    '  A grinding wheel can burst: ring-test it, keep to its rated speed, guard it, wear eye protection, and follow the',
    '  machine maker and your local code (in the USA 29 CFR 1910.215).',
    '',
  ].join('\n');
}

function memberLines({ memberId, sections }: SectionPlan, stock: number): readonly string[] {
  return [
    `${memberId}: ${sections.length} sections`,
    '',
    ...sections.flatMap((section) => [...sectionLines(section, stock), '']),
  ];
}

function sectionLines({ section, measures }: MeasuredSection, stock: number): readonly string[] {
  const { joints, wheelRadius } = section;
  const steps = [
    `Rough the blank to ${sayLength(stock)} over size on every face (drawing layer with-grinding-stock). Harden.`,
    'Grind top and bottom flat and parallel.',
    ...joints.map(
      ({ from, to }, k) =>
        `Grind joint ${k + 1} flat and square to the bottom: ${sayLength(Math.hypot(to.x - from.x, to.y - from.y))} long` +
        `${k === 0 ? '; it is the base for what follows' : ''}.`,
    ),
    wheelRadius === null
      ? 'Dress the wheel flat with a sharp edge: the working face has no hollow radius.'
      : `Dress the wheel to a radius of ${sayLength(wheelRadius)}, no larger: the smallest hollow radius of the working face.`,
    `Grind the working face, leaving a few hundredths; measure; finish to size.`,
    ...measures.map((measure, k) => measureLine(measure, k)),
    ...(measures.length === 0
      ? ['Measure the working face from a joint with gauge blocks and indicator, or on a comparator.']
      : []),
    'Set beside its neighbours: no light through the joints, the opening to size over all.',
  ];
  return [`  Section ${section.id}`, ...steps.map((step, k) => `    ${k + 1}. ${step}`)];
}

function measureLine({ corner, toCorner, nook, pin, under, over }: SectionMeasure, k: number): string {
  const at = `corner at x ${short(corner.x)} y ${short(corner.y)}`;
  const seat =
    pin.stack === 0
      ? 'on the plate'
      : `on ${sayLength(pin.stack)} of gauge blocks${under && under.length > 0 ? ` (${under.join(' + ')})` : ''}`;
  const stack = over ? `; set it with ${over.join(' + ')} mm` : '';
  return (
    `Measure ${k + 1}, ${at}: joint face on the plate, its outer end the datum, ${sayLength(toCorner)} to the corner. ` +
    `The working face stands at ${sayAngle(nook)} to the plate. Pin of ${sayLength(pin.pin)} ${seat}, touching the face ` +
    `${sayLength(pin.contact)} up: over the pin ${pin.overPin.toFixed(4)} mm from the datum${stack}.`
  );
}

const short = (mm: number): string => String(Number(mm.toFixed(3)));
