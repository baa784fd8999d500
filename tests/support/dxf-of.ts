import type { Contour, Region } from '../../core/geometry/contour';
import { jobOnDrawing } from '../../core/job-file';
import type { Job } from '../../core/job';

/** A small ASCII DXF in mm of closed polylines, one a contour. */
export function dxfOf(region: Region, insunits = 4): string {
  const groups: (string | number)[] = [
    0,
    'SECTION',
    2,
    'HEADER',
    9,
    '$ACADVER',
    1,
    'AC1015',
    9,
    '$INSUNITS',
    70,
    insunits,
    0,
    'ENDSEC',
  ];
  groups.push(0, 'SECTION', 2, 'ENTITIES');
  for (const contour of region) groups.push(...polylineOf(contour));
  groups.push(0, 'ENDSEC', 0, 'EOF');
  return `${groups.join('\n')}\n`;
}

function polylineOf(contour: Contour): (string | number)[] {
  const head = [0, 'LWPOLYLINE', 100, 'AcDbEntity', 8, 'CUT', 100, 'AcDbPolyline', 90, contour.length, 70, 1];
  return [...head, ...contour.flatMap(({ x, y, bulge }) => [10, x, 20, y, 42, bulge])];
}

/** A job on a drawing of these contours, with the parts of the job that matter to a test changed. */
export function jobOn(region: Region, changes: Partial<Job> = {}): Job {
  return { ...jobOnDrawing('test.dxf', new TextEncoder().encode(dxfOf(region))), ...changes };
}
