import { DxfWriter, LWPolylineFlags, TrueColor } from '@tarikjabiri/dxf';
import type { DrawingContour } from '../drawing/drawing';
import type { Plan } from '../plan';
import { drawingUnits } from '../units';

/**
 * The contours of the drawing as they were read and put right, as DXF (AC1021): in the drawing's unit, on the layers and
 * in the colours that they came with, arcs as arcs (bulges), nothing rounded. For the customer to compare with, and as a
 * clean drawing to go on from. The same plan gives the same bytes.
 */
export function writeOutlineDxf({ drawing }: Plan): string {
  const { code, mm } = drawingUnits[drawing.unit];
  const dxf = new DxfWriter();
  // The library names the codes of $INSUNITS; ours are the same numbers.
  dxf.setUnits(code);
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Diewright' });
  const isIndexed = drawing.format !== 'svg';
  // Layer 0 is in every file.
  const made = new Set(['0']);
  for (const contour of drawing.contours) {
    const layerName = dxfName(contour.layer);
    if (!made.has(layerName.toUpperCase())) {
      made.add(layerName.toUpperCase());
      const layer = dxf.addLayer(layerName, isIndexed ? contour.colour : ink, 'Continuous');
      if (!isIndexed) layer.trueColor = trueColour(contour);
    }
    const points = contour.contour.map(({ x, y, bulge }) => ({ point: { x: x / mm, y: y / mm }, bulge }));
    dxf.addLWPolyline(points, {
      layerName,
      flags: LWPolylineFlags.Closed,
      ...(isIndexed ? { colorNumber: contour.colour } : { trueColor: String(trueColour(contour)) }),
    });
  }
  return `${dxf.stringify()}\n`;
}

/** White or black, whichever can be seen. */
const ink = 7;

const trueColour = ({ colour }: DrawingContour): number =>
  TrueColor.fromHex(colour.toString(16).padStart(6, '0'));

/** Without the characters that no layer name may have (DXF reference, symbol names), never empty. */
const dxfName = (name: string): string => name.replace(/[<>/\\":;?*|=`\p{C}]/gu, '_').slice(0, 255) || '0';
