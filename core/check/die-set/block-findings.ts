import type { ToolSheet } from '../../die/die-set';
import { blockByStockSource, blockFactorSource, leastDieWall, screwEdge } from '../../die/die-rules';
import { saySource } from '../../die/sourced';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { sayLength } from '../../say';

/** The die block: too thin, walls too thin, no room for screws, and how long it lasts. */
export function dieBlockFindings(sheet: ToolSheet): readonly Finding[] {
  if (sheet.block.openings.length === 0) return [];
  return [...thinBlock(sheet), ...thinWall(sheet), ...screwRoom(sheet), ...regrinds(sheet)];
}

function thinBlock({ tool, block }: ToolSheet): readonly Finding[] {
  const { height, thickness } = block;
  if (height >= thickness.least) return [];
  return [
    findingOf({
      code: 'die-block-thin',
      weight: 'decide',
      title: `${tool.name}: the die block is thin`,
      message:
        `It is ${sayLength(height)} high. By the force of the cut it should be ${sayLength(thickness.byForce)} (K·∛F, ${blockFactorSource}), ` +
        `by the stock ${sayLength(thickness.byStock)} (${blockByStockSource}).`,
      numbers: [
        { label: 'height', value: height, kind: 'length' },
        { label: 'least height', value: thickness.least, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Take a higher block, or back it with a hardened plate.' }],
    }),
  ];
}

function thinWall({ tool, block }: ToolSheet): readonly Finding[] {
  const { wall, leastWall } = block;
  if (!wall || wall.width >= leastWall) return [];
  return [
    findingOf({
      code: 'die-wall-thin',
      weight: 'decide',
      title: `${tool.name}: a thin wall in the die`,
      message: `Only ${sayLength(wall.width)} of steel stand here; ${sayLength(leastWall)} are wanted, ${leastDieWall.value} times the stock (${saySource(leastDieWall)}).`,
      place: {
        x: (wall.from.x + wall.to.x) / 2,
        y: (wall.from.y + wall.to.y) / 2,
        reach: 3 * wall.width,
      },
      numbers: [{ label: 'wall', value: wall.width, kind: 'length' }],
      cures: [
        {
          kind: 'other',
          say: 'Leave an idle station between the openings, or set an insert into the block.',
        },
      ],
    }),
  ];
}

function screwRoom({ tool, block }: ToolSheet): readonly Finding[] {
  const [crowded] = block.screws.filter(({ isFree }) => !isFree);
  if (!crowded) return [];
  const { kind, diameter, distance, x, y } = crowded;
  return [
    findingOf({
      code: 'screw-room',
      weight: 'decide',
      title: `${tool.name}: no room for a ${kind}`,
      message:
        `A ${kind} of ${sayLength(diameter)} would stand ${sayLength(Math.max(0, distance))} from an opening; ` +
        `${screwEdge.value} diameters are wanted (${saySource(screwEdge)}).`,
      place: { x, y, reach: 4 * diameter },
      numbers: [{ label: 'distance', value: distance, kind: 'length' }],
      cures: [{ kind: 'other', say: 'Make the block larger, or clamp it in a frame.' }],
    }),
  ];
}

function regrinds({ tool, block }: ToolSheet): readonly Finding[] {
  if (block.regrinds > 0) return [];
  return [
    findingOf({
      code: 'no-regrinds',
      weight: 'note',
      title: `${tool.name}: the die cannot be reground`,
      message: `Taking ${sayLength(block.perGrind)} off the face uses up the land, or leaves the block lower than ${sayLength(block.thickness.least)}.`,
      numbers: [{ label: 'per regrind', value: block.perGrind, kind: 'length' }],
    }),
  ];
}
