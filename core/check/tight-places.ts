import type { PairCorner } from '../die/corner-radii';
import type { Cure, Finding, FindingNumber } from '../finding';
import type { Region } from '../geometry/contour';
import { contourBox } from '../geometry/contour-measures';
import type { MemberRole, Remainder } from '../plan';
import { asCutRegion } from '../wire/as-cut';
import { wireDiameters } from '../wire/pass-offsets';
import { findingOf } from '../finding-of';
import { sayAngle, sayLength } from '../say';
import { insideCornerAt } from './corner-at';
import { extent, unreachedPlaces, type Shape, type UnreachedPlace } from './unreached-places';

export interface TightPlaces {
  readonly remainders: readonly Remainder[];
  readonly findings: readonly Finding[];
}

export interface TightQuery {
  readonly memberId: string;
  readonly contourId: string;
  readonly role: MemberRole;
  readonly designed: Region;
  readonly asCut: Region;
  readonly reach: number;
  readonly wireDiameter: number;
  /** Spark gap of the finishing pass, mm. */
  readonly sparkGap: number;
  /** Of the drawing's contour. */
  readonly corners: readonly PairCorner[];
  /** Whether the part gets its shape from this member. */
  readonly givesSize: boolean;
}

/**
 * Every place that the wire cannot reach, from the as-cut operation alone: what lies between the designed and the
 * as-cut contour is the remainder, and the shape of the designed contour along it says whether it is a sharp corner,
 * a radius smaller than the reach, or a slot or neck. Remainders thinner than the remainder tolerance are none.
 */
export function tightPlaces(query: TightQuery): TightPlaces {
  const { designed, asCut, role, reach } = query;
  const thinner = thinnerWires(query);
  const remainders: Remainder[] = [];
  const findings: Finding[] = [];
  for (const place of unreachedPlaces(designed, asCut, role, reach)) {
    const { outline, depth, area } = place;
    const wire = thinner.find(({ left }) => cures(left(), place));
    const finding = describe(query, place, wire?.diameter ?? null);
    findings.push(finding);
    remainders.push({ findingKey: finding.key, outline, depth, area });
  }
  return { remainders, findings };
}

interface ThinnerWire {
  readonly diameter: number;
  /** The places it does not reach, worked out when first asked for. */
  readonly left: () => readonly UnreachedPlace[];
}

/** Thinner wires of common diameters, thickest first. */
function thinnerWires({ designed, role, wireDiameter, sparkGap }: TightQuery): readonly ThinnerWire[] {
  return wireDiameters
    .filter((diameter) => diameter < wireDiameter)
    .map((diameter) => {
      const reach = diameter / 2 + sparkGap;
      let left: readonly UnreachedPlace[] | undefined;
      return {
        diameter,
        left: () => (left ??= unreachedPlaces(designed, asCutRegion(designed, role, reach), role, reach)),
      };
    });
}

/** Whether nothing of a place is left by another wire; of a slot, nothing but its corners. */
function cures(left: readonly UnreachedPlace[], place: UnreachedPlace): boolean {
  const box = contourBox(place.outline);
  return left.every((other) => {
    if (place.shape.kind === 'slot' && other.shape.kind !== 'slot') return true;
    const own = contourBox(other.outline);
    return own.minX > box.maxX || own.maxX < box.minX || own.minY > box.maxY || own.maxY < box.minY;
  });
}

function describe(query: TightQuery, place: UnreachedPlace, wire: number | null): Finding {
  const { reach, memberId, contourId, role } = query;
  const { shape, outline, depth, area } = place;
  const left = sayLength(depth);
  const numbers: FindingNumber[] = [
    { label: 'remainder', value: depth, kind: 'length' },
    { label: 'reach', value: reach, kind: 'length' },
    { label: 'area', value: area, kind: 'area' },
  ];
  const cures = curesFor(query, shape, wire);
  const base = {
    weight: 'decide' as const,
    place: { x: shape.at.x, y: shape.at.y, reach: Math.max(extent(outline), 4 * reach) },
    contourId,
    memberId,
    cures,
  };
  switch (shape.kind) {
    case 'corner':
      return findingOf({
        ...base,
        code: 'inside-corner',
        title: `Sharp inside corner of the ${role}, ${sayAngle(shape.angle)}`,
        message: `The wire leaves a fillet of ${sayLength(reach)} here: ${left} of stock stays in the corner.`,
        numbers: [{ label: 'angle', value: shape.angle, kind: 'angle' }, ...numbers],
      });
    case 'radius':
      return findingOf({
        ...base,
        code: 'inside-radius',
        title: `Inside radius of the ${role} below the reach`,
        message: `The designed radius is ${sayLength(shape.radius)}, the wire makes ${sayLength(reach)}: ${left} of stock stays.`,
        numbers: [{ label: 'radius', value: shape.radius, kind: 'length' }, ...numbers],
      });
    case 'slot':
      return findingOf({
        ...base,
        code: 'slot',
        title: `Slot or neck of the ${role} too narrow for the wire`,
        message: `The wire needs ${sayLength(2 * reach)} and does not get through: ${left} of depth stays uncut.`,
        numbers,
      });
  }
}

function curesFor(query: TightQuery, shape: Shape, wire: number | null): readonly Cure[] {
  const cures: Cure[] = [];
  if (wire !== null) {
    cures.push({
      kind: 'wire',
      diameter: wire,
      say: `Use ${sayLength(wire)} wire, ${shape.kind === 'slot' ? 'the largest that gets through' : 'the largest that reaches it'}.`,
    });
  }
  if (shape.kind !== 'slot') cures.push(filletCure(query, shape));
  cures.push({
    kind: 'section',
    say: 'Split the member through this place and grind or cut the sections open.',
  });
  return cures;
}

/** The fillet that the wire leaves anyway, written down as what is wanted. */
function filletCure(query: TightQuery, { at }: Shape): Cure {
  const { corners, role, reach, contourId, givesSize } = query;
  const fillet = `a fillet of ${sayLength(reach)}`;
  const corner = insideCornerAt(corners, role, at);
  if (!corner) return { kind: 'fillet', radius: reach, say: `Agree ${fillet} with the customer.` };
  return {
    kind: 'corner',
    contourId,
    at: corner.place.at,
    side: 'inside',
    rule: { rule: 'radius', radius: reach },
    say: givesSize
      ? `Give the corner ${fillet}, and agree it with the customer: the part gets it.`
      : `Give the corner of the ${role} ${fillet}: the part stays as drawn.`,
  };
}
