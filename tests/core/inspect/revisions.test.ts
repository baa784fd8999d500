import { expect, test } from 'vitest';
import type { Finding } from '../../../core/finding';
import { findingOf } from '../../../core/finding-of';
import type { Region } from '../../../core/geometry/contour';
import { reversedContour } from '../../../core/geometry/contour-measures';
import { carryDispositions } from '../../../core/inspect/carry-dispositions';
import { changedPlaces } from '../../../core/inspect/changed-places';
import { createInspector } from '../../../core/inspector';
import type { Job } from '../../../core/job';
import { createPipeline } from '../../../core/pipeline';
import { dxfOf, jobOn } from '../../support/dxf-of';
import { circle, polygon, square } from '../../support/shapes';

// Expected values: areas and distances of elementary geometry, written beside each case.

const hole = (radius: number, x: number, y: number) => reversedContour(circle(radius, x, y));

test('an outline is like itself, also drawn from another corner', () => {
  const plate = square(10);
  const turned = [...plate.slice(2), ...plate.slice(0, 2)];
  expect(changedPlaces([plate], [turned], 0.001)).toEqual([]);
});

test('a lug added, a corner cut away, a hole made larger, a hole new: each with its size', () => {
  const older: Region = [square(40), hole(3, 10, 10)];
  const newer: Region = [
    // The lug is 4 long and 1.5 high; the corner cut 2 × 2.
    polygon([0, 0], [40, 0], [40, 38], [38, 40], [24, 40], [24, 41.5], [20, 41.5], [20, 40], [0, 40]),
    hole(3.1, 10, 10),
    hole(1, 30, 20),
  ];
  const places = changedPlaces(older, newer, 0.001);
  const summary = places.map(({ change, size, area }) => [
    change,
    Number(size.toFixed(6)),
    Number(area.toFixed(4)),
  ]);
  expect(summary).toEqual([
    // The new hole: as large as it is.
    ['removed', 2, Number(Math.PI.toFixed(4))],
    ['added', 1.5, 6],
    // The corner's old point lies √2 from the new edge.
    ['removed', Number(Math.SQRT2.toFixed(6)), 2],
    ['removed', 0.1, Number((Math.PI * (3.1 ** 2 - 9)).toFixed(4))],
  ]);
  expect(places[1]?.box).toMatchObject({ minX: 20, maxX: 24, minY: 40, maxY: 41.5 });
});

test('changes below the limit do not count', () => {
  // The corner moves √2 as far as the edges.
  expect(changedPlaces([square(10)], [square(10.0007)], 0.001)).toEqual([]);
  expect(changedPlaces([square(10)], [square(10.0008)], 0.001)).toHaveLength(1);
});

const corner = (x: number, y: number, memberId = 'blank-c1-die', value = 0.06): Finding =>
  findingOf({
    code: 'inside-corner',
    weight: 'decide',
    title: 'Sharp inside corner',
    message: 'A fillet stays.',
    place: { x, y, reach: 1 },
    memberId,
    numbers: [{ label: 'depth', value, kind: 'length' }],
  });

test('dispositions: carried over where nothing changed, reopened where it did, gone where nothing is found', () => {
  const before = [corner(0, 0), corner(10, 0), corner(20, 0), corner(30, 0), corner(40, 0)];
  const after = [
    corner(0, 0),
    corner(10, 0),
    // Counted anew: another contour's number, the same place.
    corner(20, 0, 'blank-c2-die'),
    // The same place with another depth.
    corner(30, 0, 'blank-c1-die', 0.08),
  ];
  // The reason of the second is missing: it was never accepted.
  const settled = Object.fromEntries(
    before.filter((_, k) => k !== 1).map(({ key }) => [key, { reason: 'agreed' }]),
  );
  const untouched = carryDispositions(before, after, settled, []);
  expect(untouched.map(({ fate }) => fate)).toEqual(['carried over', 'carried over', 'reopened', 'gone']);
  expect(untouched[1]?.after?.memberId).toBe('blank-c2-die');

  const change = changedPlaces([square(0.5)], [square(0.6)], 0.001);
  const touched = carryDispositions(before, after, settled, change);
  expect(touched.map(({ fate }) => fate)).toEqual(['reopened', 'carried over', 'reopened', 'gone']);
});

const inspector = createInspector(createPipeline(), createPipeline());

const compared = (question: Parameters<typeof inspector.revision>[0]) => {
  const revision = inspector.revision(question);
  if (!revision.ok) throw new Error(revision.problem.what);
  return revision.value;
};

const onDrawing = (job: Job, region: Region): Job => ({
  ...job,
  drawing: { ...job.drawing, content: dxfOf(region) },
});

test('a new drawing: what was chosen for a contour stays on it, though the contours are counted anew', () => {
  // The hole with a size shift is the only one, then the second of two.
  const older = jobOn([square(40), circle(3, 30, 10)], { sizeShifts: { c2: 0.01 } });
  const newer = onDrawing(older, [square(40), circle(4, 10, 30), circle(3, 30, 10)]);
  const { taken, places } = compared({ kind: 'new drawing', older, newer });
  const [shifted] = Object.keys(taken.job.sizeShifts);
  const plan = createPipeline().plan(taken.job);
  const contour = plan.ok && plan.value.drawing.contours.find(({ id }) => id === shifted)?.contour;
  expect(contour && contour[0] && Math.hypot(contour[0].x - 30, contour[0].y - 10)).toBeCloseTo(3, 9);
  expect(taken.lost).toEqual([]);
  expect(places.map(({ change, size }) => [change, size])).toEqual([['removed', 8]]);
});

test('a new drawing without the contour says what is lost with it', () => {
  const older = jobOn([square(40), circle(3, 30, 10)], { sizeShifts: { c2: 0.01 } });
  const { taken } = compared({ kind: 'new drawing', older, newer: onDrawing(older, [square(40)]) });
  expect(taken.lost).toEqual(['c2']);
  expect(taken.job.sizeShifts).toEqual({});
});

test('an earlier job: its values beside the present ones, the present job untouched', () => {
  const older = jobOn([square(40)]);
  const newer: Job = { ...older, wire: { diameter: 0.2 }, sizeShifts: { c1: 0.02 } };
  const { taken, settings, places } = compared({ kind: 'earlier job', older, newer });
  expect(taken.job).toBe(newer);
  expect(places).toEqual([]);
  expect(settings).toContainEqual({ name: 'wire diameter', before: '0.25', after: '0.2' });
});
