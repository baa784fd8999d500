import type { ToolSheet } from '../../die/die-set';
import { strippingSource } from '../../die/stripping-force';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { sayForce, sayLength, shortNumber } from '../../say';

/** Force, press, springs and knockout of one tool. */
export function forceFindings(sheet: ToolSheet, knockout: Knockout): readonly Finding[] {
  if (sheet.cuts.length === 0) return [];
  return [...stuckPiece(sheet, knockout), ...ownForce(sheet)];
}

export type Knockout = 'none' | 'springs' | 'positive';

/** In a compound tool the die is above: what it blanks stays in it. */
function stuckPiece({ tool, cuts, parts }: ToolSheet, knockout: Knockout): readonly Finding[] {
  const isDieUp = parts.some(({ id, memberIds }) => id === 'punch' && memberIds.length > 1);
  if (!isDieUp || knockout !== 'none' || !cuts.some(({ use }) => use === 'blank')) return [];
  return [
    findingOf({
      code: 'knockout-none',
      weight: 'decide',
      title: `${tool.name}: nothing takes the piece out of the die`,
      message:
        'The die of a compound tool comes down from above, and the piece stays in it: it needs a knockout, by springs ' +
        'or by the press (common practice).',
      cures: [{ kind: 'other', say: 'Choose a spring or a positive knockout.' }],
    }),
  ];
}

function ownForce({ tool, force }: ToolSheet): readonly Finding[] {
  if (!force) {
    return [
      findingOf({
        code: 'force-unknown',
        weight: 'note',
        title: `${tool.name}: force not known`,
        message:
          'The stock table has neither shear nor tensile strength for this material: add it as an own material to have force, press and punch strength worked out.',
      }),
    ];
  }
  return [
    ...pressFinding(tool.name, force),
    ...springFindings(tool.name, force),
    ...blankShear(tool.name, force),
  ];
}

type Force = NonNullable<ToolSheet['force']>;

function pressFinding(name: string, { rating, needed, stroke }: Force): readonly Finding[] {
  if (rating === null || rating >= needed) return [];
  const isOver = rating < stroke;
  return [
    findingOf({
      code: 'press-too-small',
      weight: isOver ? 'stop' : 'decide',
      title: isOver ? `${name}: the press is too weak` : `${name}: the press has too little margin`,
      message:
        `The stroke takes ${sayForce(stroke)} with dull edges and springs; the press is rated ${sayForce(rating)} ` +
        `and should have ${sayForce(needed)} (margin: common practice, 20 to 30 %). Overload can break press and tool and hurt people.`,
      numbers: [
        { label: 'stroke, N', value: stroke, kind: 'count' },
        { label: 'needed, N', value: needed, kind: 'count' },
        { label: 'rated, N', value: rating, kind: 'count' },
      ],
      cures: [
        {
          kind: 'other',
          say: 'Take a larger press, grind shear on the edges, or cut in more than one stroke.',
        },
      ],
    }),
  ];
}

function springFindings(name: string, { springs, ejectors }: Force): readonly Finding[] {
  return [
    { set: springs, what: 'stripper springs' },
    { set: ejectors, what: 'knockout springs' },
  ].flatMap(({ set, what }) => {
    if (!set || set.overrun === 0) return [];
    return [
      findingOf({
        code: 'springs-overrun',
        weight: 'decide',
        title: `${name}: ${what} are pressed too far`,
        message:
          `${set.count} springs would be deflected by ${sayLength(set.deflection)}, ${sayLength(set.overrun)} more ` +
          `than they stand: preload ${sayLength(set.preload)} for the force (${strippingSource}) and the working travel.`,
        numbers: [
          { label: 'deflection', value: set.deflection, kind: 'length' },
          { label: 'overrun', value: set.overrun, kind: 'length' },
        ],
        cures: [{ kind: 'other', say: 'Take more springs, stiffer ones, or such that deflect farther.' }],
      }),
    ];
  });
}

/** A sheared punch bends what it blanks. */
function blankShear(name: string, { cuts, cutting, sheared }: Force): readonly Finding[] {
  if (sheared >= cutting || !cuts.some(({ use }) => use === 'blank')) return [];
  return [
    findingOf({
      code: 'shear-bends',
      weight: 'note',
      title: `${name}: shear on the edge`,
      message:
        `It takes the force down to ${shortNumber((100 * sheared) / cutting)} %. Shear on the punch bends what goes through ` +
        'the die: to keep the blank flat grind it on the die, to keep the stock flat on the punch (common practice).',
    }),
  ];
}
