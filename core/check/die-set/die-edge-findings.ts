import { openingToEdge } from '../../die/die-rules';
import { saySource } from '../../die/sourced';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import type { Box, Region } from '../../geometry/contour';
import { boxAround, contourBox } from '../../geometry/contour-measures';
import { sayLength } from '../../say';

/** A block of steel as it lies in the machine, and the openings that are cut in it. mm. */
export interface DieBlock {
  readonly id: string;
  readonly outline: Box;
  readonly height: number;
  readonly openings: Region;
}

/** Too little steel between the openings and the edge of the block that they are really cut from. */
export function dieEdgeFindings({ id, outline, height, openings }: DieBlock): readonly Finding[] {
  if (openings.length === 0) return [];
  const { minX, minY, maxX, maxY } = openings.map(contourBox).reduce(boxAround);
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const [narrowest] = [
    { wall: minX - outline.minX, place: { ...middle, x: minX } },
    { wall: outline.maxX - maxX, place: { ...middle, x: maxX } },
    { wall: minY - outline.minY, place: { ...middle, y: minY } },
    { wall: outline.maxY - maxY, place: { ...middle, y: maxY } },
  ].sort((a, b) => a.wall - b.wall);
  const least = openingToEdge.value * height;
  // An opening is larger than drawn by the clearance, and a block is sawn to whole millimetres.
  if (!narrowest || narrowest.wall >= least - wholeMillimetre) return [];
  const { wall, place } = narrowest;
  return [
    findingOf({
      code: 'die-edge-thin',
      weight: 'decide',
      title: `Block ${id}: little steel at its edge`,
      message:
        `${sayLength(Math.max(0, wall))} of steel stand between the opening and the edge; ${sayLength(least)} are wanted, ` +
        `${openingToEdge.value} times the height (${saySource(openingToEdge)}).`,
      place: { ...place, reach: height },
      numbers: [
        { label: 'wall', value: wall, kind: 'length' },
        { label: 'least wall', value: least, kind: 'length' },
      ],
      cures: [{ kind: 'other', say: 'Take a larger block, or hold it in a frame.' }],
    }),
  ];
}

const wholeMillimetre = 1;
