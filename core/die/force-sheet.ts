import type { Contour, Region } from '../geometry/contour';
import { perimeterCentroid, type PerimeterCentroid } from '../geometry/perimeter-centroid';
import type { CutForce } from './cut-force';
import { shearedShare, type EdgeShear } from './sheared-force';
import { springSet, type SpringData, type SpringSet } from './spring-set';
import type { Tool } from './tool';

export interface ForceChoice {
  readonly dull: number;
  readonly margin: number;
  /** Rating of the press, N; null: not chosen. */
  readonly rating: number | null;
  readonly stripping: 'fixed' | 'springs';
  readonly knockout: 'none' | 'springs' | 'positive';
  readonly springs: SpringData & { readonly count: number | null };
  /** How far the punch goes beyond the stock, mm. */
  readonly entry: number;
  readonly edgeShear: {
    readonly shear: EdgeShear;
    readonly on: 'pierce' | 'blank' | 'all';
    readonly depth: number;
    readonly direction: number;
    readonly penetration: number;
  };
}

/** What one stroke of a tool takes, N. */
export interface ForceSheet {
  readonly toolId: Tool['id'];
  readonly cuts: readonly CutForce[];
  /** Length of all cuts, mm. */
  readonly length: number;
  /** Sharp edges, all of it at once. */
  readonly cutting: number;
  /** The same after what the shear on the edges takes off. */
  readonly sheared: number;
  /** With dull edges. */
  readonly dull: number;
  /** To strip the stock off the punches: the published range. */
  readonly strippingFrom: number;
  readonly strippingTo: number;
  /** To push the piece out of its die; 0 where nothing is blanked. */
  readonly ejecting: number;
  /** Springs that strip, and springs that eject the piece; null where there are none. */
  readonly springs: SpringSet | null;
  readonly ejectors: SpringSet | null;
  /** Dull cut and springs at the bottom of the stroke. */
  readonly stroke: number;
  /** What the press should be rated for: the stroke and the margin. */
  readonly needed: number;
  readonly rating: number | null;
  /** Where the force acts: the centroid of all cut lengths. */
  readonly centre: PerimeterCentroid | null;
}

/** The force of one stroke; null where the stock has no strength at all. */
export function forceSheet(
  tool: Tool,
  cuts: readonly CutForce[],
  thickness: number,
  choice: ForceChoice,
): ForceSheet | null {
  const known = cuts.flatMap((cut) => (cut.force === null ? [] : [{ cut, force: cut.force }]));
  if (known.length === 0 || known.length < cuts.length) return null;
  const sum = (of: (entry: (typeof known)[number]) => number) =>
    known.reduce((total, entry) => total + of(entry), 0);
  const cutting = sum(({ force }) => force);
  const contours = new Map(tool.cuts.map(({ contourId, contour }) => [contourId, contour]));
  const sheared = sum(
    ({ cut, force }) => force * shareOf(contours.get(cut.contourId), cut, thickness, choice),
  );
  const dull = sheared * (1 + choice.dull);
  const strippingTo = sum(({ cut, force }) => force * cut.stripping.to);
  // A piece is pushed out of its die with about the force that strips a hole of its width.
  const ejecting = sum(({ cut, force }) => (cut.use === 'blank' ? force * cut.stripping.to : 0));
  const travel = thickness + choice.entry;
  const springs =
    choice.stripping === 'springs'
      ? springSet(strippingTo, travel, choice.springs, choice.springs.count)
      : null;
  const ejectors =
    choice.knockout === 'springs' && ejecting > 0
      ? springSet(ejecting, travel, choice.springs, choice.springs.count)
      : null;
  const stroke = dull + (springs?.closedForce ?? 0) + (ejectors?.closedForce ?? 0);
  return {
    toolId: tool.id,
    cuts,
    length: sum(({ cut }) => cut.length),
    cutting,
    sheared,
    dull,
    strippingFrom: sum(({ cut, force }) => force * cut.stripping.from),
    strippingTo,
    ejecting,
    springs,
    ejectors,
    stroke,
    needed: stroke * (1 + choice.margin),
    rating: choice.rating,
    centre: perimeterCentroid(regionOf(tool)),
  };
}

const regionOf = (tool: Tool): Region => tool.cuts.map(({ contour }) => contour);

function shareOf(
  contour: Contour | undefined,
  cut: CutForce,
  thickness: number,
  { edgeShear }: ForceChoice,
): number {
  if (!contour || (edgeShear.on !== 'all' && edgeShear.on !== cut.use)) return 1;
  return shearedShare([contour], { ...edgeShear, penetration: edgeShear.penetration * thickness });
}
