import type { Box, Region } from '../geometry/contour';
import { boxAround, contourBox } from '../geometry/contour-measures';
import { movedContour } from '../geometry/moved-contour';
import type { DieSet } from '../die/die-set';
import type { MeasuredSection } from '../die/section-plan';
import { straight } from '../die/section';
import type { StripPlan } from '../die/strip-plan';
import type { Job } from '../job';
import type { Plan } from '../plan';
import { formatLength } from '../units';
import { draftMark } from './cautions';
import { dieSetCsv } from './die-set-csv';
import { dxfDrawing, type DrawnLayer, type DrawnNotes } from './dxf-drawing';
import { grindingNote } from './grinding-note';
import type { OutputFile } from './output-file';

/**
 * The die set's own files: its parts in one drawing with a layer each, the strip, one drawing a section, the grinding
 * note, and every number with its rule as CSV. `stem` names files; `mark` is the draft's.
 */
export function dieSetFiles(
  plan: Plan,
  job: Job,
  name: string,
  mark: string,
  stem: (text: string) => string,
): readonly OutputFile[] {
  const { dieSet } = plan;
  const sections = dieSet.sections.flatMap((own) => own.sections);
  const draw = (what: string, layers: readonly DrawnLayer[], box: Box, title: string): OutputFile => ({
    name: `${name}-${what}${mark}.dxf`,
    text: dxfDrawing(layers, notesBelow(box, [title], plan, job), job.output.unit),
  });
  const parts = partLayers(dieSet);
  return [
    ...(parts.length > 0 ? [draw('die-set', parts, boxOf(parts), 'Parts of the die set')] : []),
    ...(dieSet.strip
      ? [draw('strip', stripLayers(dieSet.strip), stripBox(dieSet.strip), stripTitle(dieSet.strip, job))]
      : []),
    ...sections.map(({ section }) => {
      const layers = sectionLayers({ section, measures: [] });
      return draw(`section-${stem(section.id)}`, layers, boxOf(layers), `Section ${section.id}`);
    }),
    ...(sections.length > 0 ? [{ name: `${name}-grinding-note.txt`, text: grindingNote(plan, job) }] : []),
    ...(dieSet.tools.length > 0 ? [{ name: `${name}-die-set${mark}.csv`, text: dieSetCsv(plan, job) }] : []),
  ];
}

function partLayers(dieSet: DieSet): readonly DrawnLayer[] {
  const tools = dieSet.tools.flatMap(({ tool, parts, block, force }): DrawnLayer[] => [
    ...(block.outline
      ? [
          { name: `${tool.id}-die-block`, kind: 'die' as const, closed: [rectangle(block.outline)] },
          {
            name: `${tool.id}-screws-and-dowels`,
            kind: 'start-hole' as const,
            circles: block.screws,
          },
        ]
      : []),
    ...parts.map((part): DrawnLayer => ({
      name: `${tool.id}-${part.id === 'punch' || part.id === 'piercing-punch' ? (part.memberIds[0] ?? part.id) : part.id}`,
      kind: part.id === 'punch' || part.id === 'piercing-punch' ? 'punch' : 'die',
      closed: part.region,
    })),
    ...(force?.centre
      ? [
          {
            name: `${tool.id}-centre-of-pressure`,
            kind: 'notes' as const,
            circles: [{ ...force.centre, diameter: 2 }],
          },
        ]
      : []),
  ]);
  const oneBlocks = dieSet.oneBlocks.flatMap(({ contourId, contours }): DrawnLayer[] =>
    (['die edge', 'punch edge'] as const).flatMap((face): DrawnLayer[] => {
      const at = `one-block-${contourId}-${face.replace(' ', '-')}-face`;
      return [
        { name: `${at}-die`, kind: 'die', closed: contours[face].die },
        { name: `${at}-punch`, kind: 'punch', closed: contours[face].punch },
        { name: `${at}-wire`, kind: 'path', closed: contours[face].wire },
      ];
    }),
  );
  return [...tools, ...oneBlocks];
}

/** Three steps of the strip, its edges and pilots. */
function stripLayers({ layout, outline, holes, pilots }: StripPlan): readonly DrawnLayer[] {
  const placed = (region: Region): Region =>
    [0, 1, 2].flatMap((k) =>
      layout.places.flatMap((place) =>
        region.map((contour) => movedContour(contour, { ...place, x: place.x + k * layout.feed })),
      ),
    );
  const box = stripBox({ layout, outline });
  return [
    { name: 'blanks', kind: 'die', closed: placed([outline]) },
    { name: 'holes', kind: 'punch', closed: placed(holes) },
    {
      name: 'strip',
      kind: 'path',
      open: [
        straight({ x: box.minX, y: box.minY }, { x: box.maxX, y: box.minY }),
        straight({ x: box.minX, y: box.maxY }, { x: box.maxX, y: box.maxY }),
      ],
    },
    {
      name: 'pilots',
      kind: 'start-hole',
      circles: [0, 1, 2].flatMap((k) => pilots.map((pilot) => ({ ...pilot, x: pilot.x + k * layout.feed }))),
    },
  ];
}

function stripBox({ layout, outline }: Pick<StripPlan, 'layout' | 'outline'>): Box {
  const boxes = [0, 2].flatMap((k) =>
    layout.places.map((place) =>
      contourBox(movedContour(outline, { ...place, x: place.x + k * layout.feed })),
    ),
  );
  const { minX, maxX } = boxes.reduce(boxAround);
  return {
    minX: minX - layout.bridge,
    maxX: maxX + layout.bridge,
    minY: layout.bottom,
    maxY: layout.bottom + layout.width,
  };
}

const stripTitle = ({ layout }: StripPlan, { output: { unit } }: Job): string =>
  `Strip ${formatLength(layout.width, unit)} wide, feed ${formatLength(layout.feed, unit)}, ` +
  `${(100 * layout.used).toFixed(1)} % of the stock used`;

function sectionLayers({ section }: MeasuredSection): readonly DrawnLayer[] {
  return [
    { name: 'finished', kind: 'die', closed: section.outline },
    { name: 'with-grinding-stock', kind: 'remainder', closed: section.rough },
    { name: 'working-edge', kind: 'path', open: section.working },
    { name: 'joints', kind: 'lead', open: section.joints.map(({ from, to }) => straight(from, to)) },
  ];
}

const rectangle = ({ minX, minY, maxX, maxY }: Box) => [
  { x: minX, y: minY, bulge: 0 },
  { x: maxX, y: minY, bulge: 0 },
  { x: maxX, y: maxY, bulge: 0 },
  { x: minX, y: maxY, bulge: 0 },
];

function boxOf(layers: readonly DrawnLayer[]): Box {
  const boxes = layers.flatMap(({ closed = [] }) => closed.map(contourBox));
  return boxes.length > 0 ? boxes.reduce(boxAround) : { minX: 0, minY: 0, maxX: 1, maxY: 1 };
}

function notesBelow(box: Box, lines: readonly string[], plan: Plan, job: Job): DrawnNotes {
  const height = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 40;
  return {
    at: { x: box.minX, y: box.minY - 6 * height },
    height,
    lines: [...(plan.released ? [] : [draftMark]), `Diewright: ${job.name}`, ...lines],
  };
}
