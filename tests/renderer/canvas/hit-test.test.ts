import { describe, expect, it } from 'vitest';
import { hitDrawing, hitTest } from '../../../renderer/canvas/hit-test';
import { layoutMarks } from '../../../renderer/canvas/mark-layout';
import { toScreen, type Viewport } from '../../../renderer/state/viewport';
import { smallFinding } from '../support/small-finding';
import { testPlan } from '../support/test-app';

// A blank of 20 × 10 mm about the origin; its punch lies 0.06 mm inside.
const size = { width: 800, height: 600 };
const far: Viewport = { centre: { x: 0, y: 0 }, scale: 20 };
const near: Viewport = { centre: { x: 0, y: 5 }, scale: 1000 };
const corner = smallFinding({ key: 'corner', weight: 'decide', place: { x: 9.5, y: 4.5, reach: 0.2 } });
const none = { selected: null, hovered: null };

describe('hitTest', () => {
  const plan = testPlan([corner]);
  const marks = layoutMarks(plan, far, size, none);

  it('takes the contour that the pointer is nearest to', () => {
    const onDie = toScreen(near, size, { x: 0, y: 5.002 });
    expect(hitTest(plan, [], near, size, onDie)).toEqual({ kind: 'member', id: 'blank-1-die' });
    const onPunch = toScreen(near, size, { x: 0, y: 4.938 });
    expect(hitTest(plan, [], near, size, onPunch)).toEqual({ kind: 'member', id: 'blank-1-punch' });
  });

  it('takes nothing in the open', () => {
    expect(hitTest(plan, [], near, size, toScreen(near, size, { x: 0, y: 4.97 }))).toBeNull();
    expect(hitTest(plan, marks, far, size, { x: 400, y: 300 })).toBeNull();
  });

  it('takes a mark, by its badge and by its place, before the contour under it', () => {
    const [mark] = marks;
    expect(mark?.numbered).toBe(true);
    const corners = { kind: 'finding', key: 'corner' };
    expect(mark && hitTest(plan, marks, far, size, mark.at)).toEqual(corners);
    expect(mark && hitTest(plan, marks, far, size, mark.foot)).toEqual(corners);
  });
});

describe('hitDrawing', () => {
  const { drawing: plain } = testPlan();
  const contour = [
    { x: 12, y: 0, bulge: 0 },
    { x: 14, y: 0, bulge: 0 },
    { x: 14, y: 2, bulge: 0 },
  ];
  const drawing = { ...plain, leftOut: [{ id: 'c2', contour, layer: '0', reason: 'title block' }] };
  const repairs = [{ kind: 'gap', place: { x: 10, y: 0 }, size: 0.003 } as const];
  const at = (x: number, y: number) => hitDrawing(drawing, repairs, far, size, toScreen(far, size, { x, y }));

  it('takes a repair first, then the nearest contour, taken or left out', () => {
    expect(at(10, 0)).toEqual({ kind: 'repair', repair: 'gap', x: 10, y: 0 });
    expect(at(10, 2)).toEqual({ kind: 'contour', id: 'c1' });
    expect(at(13, 0.1)).toEqual({ kind: 'contour', id: 'c2' });
    expect(at(0, 0)).toBeNull();
  });

  it('what is left out can be picked among the tools too', () => {
    const plan = { ...testPlan(), drawing };
    expect(hitTest(plan, [], far, size, toScreen(far, size, { x: 13, y: 0 }))).toEqual({
      kind: 'contour',
      id: 'c2',
    });
  });
});

describe('layoutMarks', () => {
  const crowd = [0, 1, 2].map((i) =>
    smallFinding({ key: `f${i}`, weight: 'note', place: { x: i * 0.01, y: 0, reach: 0.1 } }),
  );
  const crowded = testPlan(crowd);
  const numbered = (marks: ReturnType<typeof layoutMarks>) =>
    marks.filter((mark) => mark.numbered).map(({ finding }) => finding.key);

  it('numbers the worst of those that would overlap', () => {
    expect(numbered(layoutMarks(crowded, far, size, none))).toEqual(['f0']);
  });

  it('numbers the one picked out first', () => {
    const marks = layoutMarks(crowded, far, size, { ...none, hovered: { kind: 'finding', key: 'f2' } });
    expect(numbered(marks)).toEqual(['f2']);
    expect(marks[0]?.rank).toBe(3);
  });

  it('numbers all once they are apart', () => {
    expect(numbered(layoutMarks(crowded, { ...far, scale: 5000 }, size, none))).toEqual(['f0', 'f1', 'f2']);
  });

  it('leaves out what has no place or is not on the canvas', () => {
    const findings = [smallFinding({ key: 'whole job', weight: 'note' }), corner];
    expect(layoutMarks(testPlan(findings), { ...far, centre: { x: 500, y: 0 } }, size, none)).toEqual([]);
  });
});
