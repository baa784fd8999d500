import { DxfWriter, LWPolylineFlags, Units } from '@tarikjabiri/dxf';
import type { Chain, Point, Region } from '../geometry/contour';
import { mmPerInch, type DisplayUnit } from '../units';
import { dxfLayers, type DxfLayerKind } from './dxf-layers';

/** One layer of a drawing. mm. */
export interface DrawnLayer {
  readonly name: string;
  readonly kind: DxfLayerKind;
  readonly closed?: Region;
  readonly open?: readonly Chain[];
  readonly circles?: readonly (Point & { readonly diameter: number })[];
}

export interface DrawnNotes {
  readonly at: Point;
  /** Height of the letters, mm. */
  readonly height: number;
  readonly lines: readonly string[];
}

/** Layers as one DXF (AC1021) in a unit, which `$INSUNITS` states; arcs stay arcs, nothing is rounded. */
export function dxfDrawing(layers: readonly DrawnLayer[], notes: DrawnNotes, unit: DisplayUnit): string {
  const scale = unit === 'inch' ? 1 / mmPerInch : 1;
  const dxf = new DxfWriter();
  dxf.setUnits(unit === 'inch' ? Units.Inches : Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: unit === 'inch' ? 0 : 1 });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Diewright' });
  const named = dxfLayers(dxf);
  for (const { name, kind, closed = [], open = [], circles = [] } of layers) {
    if (closed.length + open.length + circles.length === 0) continue;
    const layerName = named.named(name, kind);
    const draw = (vertices: Chain, flags: LWPolylineFlags) => {
      if (vertices.length < 2) return;
      const points = vertices.map(({ x, y, bulge }) => ({ point: { x: x * scale, y: y * scale }, bulge }));
      dxf.addLWPolyline(points, { layerName, flags });
    };
    for (const contour of closed) draw(contour, LWPolylineFlags.Closed);
    for (const chain of open) draw(chain, LWPolylineFlags.None);
    for (const { x, y, diameter } of circles) {
      dxf.addCircle({ x: x * scale, y: y * scale, z: 0 }, (diameter / 2) * scale, { layerName });
    }
  }
  notes.lines.forEach((line, i) => {
    const at = { x: notes.at.x * scale, y: (notes.at.y - 2 * i * notes.height) * scale, z: 0 };
    dxf.addText(at, notes.height * scale, plainLine(line), { layerName: named.named('notes', 'notes') });
  });
  return `${dxf.stringify()}\n`;
}

/** A line break inside a text value would be read as the next group code. */
const plainLine = (text: string): string => text.replace(/[\p{C}\p{Zl}\p{Zp}]+/gu, ' ');
