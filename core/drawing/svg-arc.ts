import type { Point } from '../geometry/contour';
import { flatSegment } from './bulge-parts';
import { conicShape } from './conic-shape';
import type { Curve } from './shape';
import { moved, turned, vector, type Transform } from './transform';
import * as portable from '../geometry/portable-math';

export interface SvgArc {
  readonly from: Point;
  readonly to: Point;
  readonly rx: number;
  readonly ry: number;
  /** Degrees. */
  readonly turn: number;
  readonly large: boolean;
  readonly sweep: boolean;
}

/**
 * An elliptical arc by its ends, placed (SVG 1.1, F.6: conversion from endpoint to centre parameters; radii that are
 * too small grow until they reach, none gives a line).
 */
export function svgArc(arc: SvgArc, place: Transform): readonly Curve[] {
  const { from, to } = arc;
  if (from.x === to.x && from.y === to.y) return [];
  const line = (): readonly Curve[] => [
    flatSegment(moved(place, vector(from.x, from.y, 0)), moved(place, vector(to.x, to.y, 0))),
  ];
  let [rx, ry] = [Math.abs(arc.rx), Math.abs(arc.ry)];
  if (rx === 0 || ry === 0) return line();
  const angle = (arc.turn * Math.PI) / 180;
  const [cos, sin] = [portable.cos(angle), portable.sin(angle)];
  const halfX = (from.x - to.x) / 2;
  const halfY = (from.y - to.y) / 2;
  const x1 = cos * halfX + sin * halfY;
  const y1 = -sin * halfX + cos * halfY;
  const reach = (x1 / rx) ** 2 + (y1 / ry) ** 2;
  if (reach > 1) {
    rx *= Math.sqrt(reach);
    ry *= Math.sqrt(reach);
  }
  const size = rx * rx * y1 * y1 + ry * ry * x1 * x1;
  const root = Math.sqrt(Math.max(0, (rx * rx * ry * ry - size) / size));
  const side = arc.large === arc.sweep ? -root : root;
  const [cx1, cy1] = [(side * rx * y1) / ry, (-side * ry * x1) / rx];
  const centre = vector(
    cos * cx1 - sin * cy1 + (from.x + to.x) / 2,
    sin * cx1 + cos * cy1 + (from.y + to.y) / 2,
    0,
  );
  const start = portable.atan2((y1 - cy1) / ry, (x1 - cx1) / rx);
  const end = portable.atan2((-y1 - cy1) / ry, (-x1 - cx1) / rx);
  let sweep = end - start;
  if (arc.sweep && sweep <= 0) sweep += 2 * Math.PI;
  if (!arc.sweep && sweep >= 0) sweep -= 2 * Math.PI;
  const sense = Math.sign(sweep);
  const u = turned(place, vector(rx * cos, rx * sin, 0));
  const v = turned(place, vector(-ry * sin * sense, ry * cos * sense, 0));
  const shape = conicShape(moved(place, centre), u, v, start * sense, start * sense + Math.abs(sweep));
  return 'reason' in shape ? line() : (shape.runs[0]?.parts ?? []);
}
