import type { DieSet } from '../../core/die/die-set';
import type { StripPlan } from '../../core/die/strip-plan';
import type { Box, Chain, Contour, Point } from '../../core/geometry/contour';
import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import { movedContour, movedPoint, undoneMotion } from '../../core/geometry/moved-contour';
import { chainChunks, contourChunks, type PathChunk } from './path-chunk';

/** A round thing: a screw, a dowel, a pilot. */
export interface Disc extends Point {
  readonly diameter: number;
}

export interface ToolName extends Point {
  readonly part: 'die block' | 'pressure';
  readonly text: string;
}

/** The die set made ready to be drawn at any zoom, in the drawing's coordinates. */
export interface DieSetScene {
  readonly blocks: readonly PathChunk[];
  readonly screws: readonly Disc[];
  readonly stripEdges: readonly PathChunk[];
  readonly blanks: readonly PathChunk[];
  readonly pilots: readonly Disc[];
  readonly joints: readonly PathChunk[];
  readonly sections: readonly PathChunk[];
  readonly centres: readonly Point[];
  /** What is whose, where there are several tools: at a block's upper left corner and beside a centre. */
  readonly names: readonly ToolName[];
}

export function buildDieSet(dieSet: DieSet): DieSetScene {
  const blocks = dieSet.tools.flatMap(({ block }) => (block.outline ? [rectangle(block.outline)] : []));
  const strip = dieSet.strip ? stripOf(dieSet.strip) : noStrip;
  const sections = dieSet.sections.flatMap((plan) => plan.sections);
  return {
    blocks: contourChunks(blocks),
    screws: dieSet.tools.flatMap(({ block }) => block.screws),
    stripEdges: chainChunks(strip.edges),
    blanks: contourChunks(strip.blanks),
    pilots: strip.pilots,
    joints: chainChunks(
      sections.flatMap(({ section }) =>
        section.joints.map(({ from, to }) => [
          { ...from, bulge: 0 },
          { ...to, bulge: 0 },
        ]),
      ),
    ),
    sections: contourChunks(sections.flatMap(({ section }) => section.outline)),
    centres: dieSet.tools.flatMap(({ force }) => (force?.centre ? [force.centre] : [])),
    names: dieSet.tools.length > 1 ? dieSet.tools.flatMap(namesOf) : [],
  };
}

function namesOf({ tool, block, force }: DieSet['tools'][number]): readonly ToolName[] {
  const { outline } = block;
  return [
    ...(outline ? [{ part: 'die block' as const, text: tool.name, x: outline.minX, y: outline.maxY }] : []),
    ...(force?.centre ? [{ part: 'pressure' as const, text: tool.name, ...force.centre }] : []),
  ];
}

interface PlacedStrip {
  readonly edges: readonly Chain[];
  readonly blanks: readonly Contour[];
  readonly pilots: readonly Disc[];
}

const noStrip: PlacedStrip = { edges: [], blanks: [], pilots: [] };

/** Three steps of the strip, so that the blank of the middle one is the drawing itself. */
function stripOf({ layout, outline, pilots }: StripPlan): PlacedStrip {
  const [first] = layout.places;
  if (!first) return noStrip;
  const back = undoneMotion(first);
  const steps = [-1, 0, 1];
  const inStrip = steps.flatMap((k) =>
    layout.places.map((place) => movedContour(outline, { ...place, x: place.x + k * layout.feed })),
  );
  const { minX, maxX } = inStrip.map(contourBox).reduce(boxAround);
  const edge = (y: number): Chain =>
    [minX - layout.bridge, maxX + layout.bridge].map((x) => ({ ...movedPoint({ x, y }, back), bulge: 0 }));
  return {
    edges: [edge(layout.bottom), edge(layout.bottom + layout.width)],
    blanks: inStrip.map((contour) => movedContour(contour, back)),
    pilots: steps.flatMap((k) =>
      pilots.map(({ x, y, diameter }) => ({
        ...movedPoint({ x: x + k * layout.feed, y }, back),
        diameter,
      })),
    ),
  };
}

const rectangle = ({ minX, minY, maxX, maxY }: Box): Contour => [
  { x: minX, y: minY, bulge: 0 },
  { x: maxX, y: minY, bulge: 0 },
  { x: maxX, y: maxY, bulge: 0 },
  { x: minX, y: maxY, bulge: 0 },
];
