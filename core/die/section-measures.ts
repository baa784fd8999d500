import type { Contour, Point, Vertex } from '../geometry/contour';
import { gaugeStack } from './gauge-stack';
import { overPin, type OverPin } from './over-pin';
import type { Joint, Section } from './section';
import * as portable from '../geometry/portable-math';

/**
 * How the corner between a joint and the working face beside it is measured: the section lies on its joint face, a pin
 * in the nook between plate and working face, the face at the joint's outer end being the datum.
 */
export interface SectionMeasure {
  readonly joint: Joint;
  /** The corner itself. */
  readonly corner: Point;
  /** From the datum to the corner, along the joint, mm. */
  readonly toCorner: number;
  /** Angle between plate and working face on the pin's side, radians. */
  readonly nook: number;
  readonly pin: OverPin;
  /** Gauge blocks under the pin, and for the measure over it; null where the set does not make it. */
  readonly under: readonly number[] | null;
  readonly over: readonly number[] | null;
}

/** The measures of a section: none for a joint that its face runs straight into, or without a square datum. */
export function sectionMeasures({ outline, joints }: Section): readonly SectionMeasure[] {
  const [outer = []] = outline;
  return joints.flatMap((joint) => {
    const length = Math.hypot(joint.to.x - joint.from.x, joint.to.y - joint.from.y);
    const along = unitFrom(joint.from, joint.to);
    const face = edgeBeside(outer, joint.from, along);
    const datum = edgeBeside(outer, joint.to, { x: -along.x, y: -along.y });
    if (!face || !datum || Math.abs(dot(datum.direction, along)) > square) return [];
    const nook = Math.PI - portable.acos(Math.max(-1, Math.min(1, dot(face.direction, along))));
    if (nook < flattest) return [];
    const pin = overPin({ toCorner: length, nook, faceLength: face.length });
    if (!pin) return [];
    return [
      {
        joint,
        corner: joint.from,
        toCorner: length,
        nook,
        pin,
        under: pin.stack === 0 ? [] : gaugeStack(pin.stack),
        over: gaugeStack(pin.overPin),
      },
    ];
  });
}

/** Cosine of an angle that still counts as square, and the flattest nook that holds a pin (radians). */
const square = 0.001;
const flattest = 0.1;

interface Edge {
  /** Away from the corner. */
  readonly direction: Point;
  readonly length: number;
}

/** The straight edge of an outline that leaves a corner otherwise than along a direction; null where it is an arc. */
function edgeBeside(outline: Contour, at: Point, along: Point): Edge | null {
  const i = outline.findIndex((v) => Math.hypot(v.x - at.x, v.y - at.y) < near);
  if (i < 0) return null;
  const here = outline[i] as Vertex;
  const next = outline[(i + 1) % outline.length] as Vertex;
  const before = outline[(i + outline.length - 1) % outline.length] as Vertex;
  const edges = [
    { to: next, bulge: here.bulge },
    { to: before, bulge: before.bulge },
  ].map(({ to, bulge }) => ({
    direction: unitFrom(here, to),
    length: Math.hypot(to.x - here.x, to.y - here.y),
    bulge,
  }));
  const [other] = edges.filter(({ direction }) => dot(direction, along) < 1 - near);
  return other?.bulge === 0 && edges.length === 2 ? other : null;
}

const near = 1 / 1_000_000;
const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

function unitFrom(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}
