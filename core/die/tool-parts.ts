import type { Region } from '../geometry/contour';
import { reversedContour } from '../geometry/contour-measures';
import type { PlateName } from '../part-name';
import type { Arrangement, Tool } from './tool';

/** One piece of steel of a tool and the contours that are cut in it. */
export interface ToolPart {
  readonly id: 'die' | 'punch' | 'piercing-punch' | PlateName;
  readonly toolId: Tool['id'];
  readonly name: string;
  /** Which contours it has and on whose account, in words. */
  readonly words: string;
  /** Openings of a die, counter-clockwise; or a punch's outline, its openings clockwise. */
  readonly region: Region;
  /** Members whose programs cut it. */
  readonly memberIds: readonly string[];
}

/**
 * The parts of a tool and which contour is on which of them. Blanking takes the clearance from the punch and piercing
 * from the die (Groover, chapter 20), wherever they sit: in a compound tool the piercing dies are openings of the
 * blanking punch.
 */
export function toolParts(arrangement: Arrangement, tool: Tool): readonly ToolPart[] {
  const blanks = tool.cuts.filter(({ use }) => use === 'blank');
  const pierces = tool.cuts.filter(({ use }) => use === 'pierce');
  const isCompound = arrangement === 'compound' && tool.id === 'tool';
  const inDie = isCompound ? blanks : tool.cuts;
  const die: ToolPart = {
    id: 'die',
    toolId: tool.id,
    name:
      isCompound || pierces.length === 0
        ? 'Blanking die'
        : blanks.length === 0
          ? 'Piercing die'
          : 'Die block',
    words: [
      ...(blanks.length > 0 ? ['blank openings at the size of the piece'] : []),
      ...(pierces.length > 0 && !isCompound ? ['holes larger by the clearance on each side'] : []),
    ].join(', '),
    region: inDie.flatMap(({ die: own }) => own.designed),
    memberIds: inDie.map(({ die: own }) => own.id),
  };
  const punches = blanks.map(({ contourId, punch }): ToolPart => {
    const own = isCompound ? pierces : [];
    return {
      id: 'punch',
      toolId: tool.id,
      name:
        own.length > 0 ? `Blanking punch ${contourId} with its piercing dies` : `Blanking punch ${contourId}`,
      words:
        own.length > 0
          ? 'outline smaller by the clearance on each side, holes larger by it'
          : 'outline smaller by the clearance on each side',
      region: [...punch.designed, ...own.flatMap((hole) => hole.die.designed.map(reversedContour))],
      memberIds: [punch.id, ...own.map((hole) => hole.die.id)],
    };
  });
  const piercing = pierces.map(({ contourId, punch }): ToolPart => ({
    id: 'piercing-punch',
    toolId: tool.id,
    name: `Piercing punch ${contourId}`,
    words: 'at the size of the hole',
    region: punch.designed,
    memberIds: [punch.id],
  }));
  return [die, ...punches, ...piercing, ...plateParts(tool)];
}

const plateWords: Readonly<Record<PlateName, { readonly name: string; readonly words: string }>> = {
  stripper: { name: 'Stripper', words: 'openings in which the punches run' },
  retainer: { name: 'Punch retainer', words: 'openings that hold the punches' },
};

const plateParts = (tool: Tool): readonly ToolPart[] =>
  (['stripper', 'retainer'] as const).flatMap((id) => {
    const openings = tool.cuts.flatMap(({ plates }) => plates.filter(({ plate }) => plate === id));
    if (openings.length === 0) return [];
    return [
      {
        id,
        toolId: tool.id,
        ...plateWords[id],
        region: openings.flatMap(({ designed }) => designed),
        memberIds: openings.map((opening) => opening.id),
      },
    ];
  });
