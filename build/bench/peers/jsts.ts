import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import BufferParameters from 'jsts/org/locationtech/jts/operation/buffer/BufferParameters.js';
import type { Point, Region } from '../../../core/geometry/contour';
import { asContour, chordPolygon, chordsOfTurn } from './chord-polygon';
import type { Peer } from './peer';

/** jsts (JTS in JavaScript), its buffer with as many chords to a quarter as the chord error asks for. */
export const jsts: Peer = {
  name: 'jsts',
  takesChords: true,
  prepare: (outline, chord) => {
    const points = chordPolygon(outline, chord);
    const ring = [...points, ...points.slice(0, 1)].map(({ x, y }) => new Coordinate(x, y));
    const polygon: unknown = new GeometryFactory().createPolygon(ring);
    return Promise.resolve((distance) => {
      const options = new BufferParameters(chordsOfTurn(chord, distance) / 4);
      const result = BufferOp.bufferOp(polygon, distance, options) as Geometry;
      return () => readGeometry(result);
    });
  },
};

/** What is used of a geometry; the package's own types call it `any`. */
interface Geometry {
  getNumGeometries(): number;
  getGeometryN(i: number): Geometry;
  getExteriorRing(): Ring;
  getNumInteriorRing(): number;
  getInteriorRingN(i: number): Ring;
}
interface Ring {
  getCoordinates(): Point[];
}

function readGeometry(result: Geometry): Region {
  return (
    Array.from({ length: result.getNumGeometries() }, (_, i) => result.getGeometryN(i))
      .flatMap((polygon) => [
        polygon.getExteriorRing(),
        ...Array.from({ length: polygon.getNumInteriorRing() }, (_, k) => polygon.getInteriorRingN(k)),
      ])
      // The last point of a ring is the first once more.
      .map((ring) => asContour(ring.getCoordinates().slice(1)))
  );
}
