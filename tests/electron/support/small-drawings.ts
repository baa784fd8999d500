/** Group codes and values, a line each, as in the DXF reference. */
const lines = (...pairs: readonly (readonly [number, string | number])[]): string =>
  pairs.map(([code, value]) => `${code}\n${value}\n`).join('');

/** An ASCII drawing of these entities; `insUnits` 4 is mm, 0 states no unit (DXF reference, $INSUNITS). */
export function smallDrawing(entities: string, insUnits = 4): string {
  return [
    lines(
      [0, 'SECTION'],
      [2, 'HEADER'],
      [9, '$ACADVER'],
      [1, 'AC1015'],
      [9, '$INSUNITS'],
      [70, insUnits],
      [0, 'ENDSEC'],
    ),
    lines([0, 'SECTION'], [2, 'ENTITIES']),
    entities,
    lines([0, 'ENDSEC'], [0, 'EOF']),
  ].join('');
}

/** A closed polyline of straight lines. */
export function polyline(...points: readonly (readonly [number, number])[]): string {
  const vertices = points.map(([x, y]) => lines([10, x], [20, y])).join('');
  return lines([0, 'LWPOLYLINE'], [100, 'AcDbPolyline'], [8, '0'], [90, points.length], [70, 1]) + vertices;
}

export const line = (x1: number, y1: number, x2: number, y2: number): string =>
  lines([0, 'LINE'], [8, '0'], [10, x1], [20, y1], [11, x2], [21, y2]);

/** 20 × 10 with a corner radius of nothing: four sharp corners outside, which a die keeps as fillets. */
export const plate = polyline([0, 0], [20, 0], [20, 10], [0, 10]);
