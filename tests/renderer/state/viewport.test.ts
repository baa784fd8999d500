import { describe, expect, it } from 'vitest';
import {
  fitted,
  framed,
  panned,
  scaleLimits,
  toDrawing,
  toScreen,
  visibleBox,
  zoomedAbout,
  type Viewport,
} from '../../../renderer/state/viewport';

// Expected numbers follow from the definition of a similarity: screen = middle ± (point − centre) · scale.
const size = { width: 800, height: 600 };
const view: Viewport = { centre: { x: 10, y: 5 }, scale: 20 };

describe('viewport', () => {
  it('puts the centre in the middle, x to the right and y up', () => {
    expect(toScreen(view, size, { x: 10, y: 5 })).toEqual({ x: 400, y: 300 });
    expect(toScreen(view, size, { x: 11, y: 6 })).toEqual({ x: 420, y: 280 });
  });

  it('finds the same place back', () => {
    const point = { x: 3.25, y: -7.5 };
    const back = toDrawing(view, size, toScreen(view, size, point));
    expect(back.x).toBeCloseTo(point.x, 12);
    expect(back.y).toBeCloseTo(point.y, 12);
  });

  it('holds the place under the pointer while zooming', () => {
    const pointer = { x: 123, y: 456 };
    const before = toDrawing(view, size, pointer);
    const zoomed = zoomedAbout(view, size, pointer, 3);
    expect(zoomed.scale).toBe(60);
    const after = toDrawing(zoomed, size, pointer);
    expect(after.x).toBeCloseTo(before.x, 12);
    expect(after.y).toBeCloseTo(before.y, 12);
  });

  it('stops at its limits and still holds the place', () => {
    const pointer = { x: 0, y: 0 };
    const zoomed = zoomedAbout(view, size, pointer, 1e9);
    expect(zoomed.scale).toBe(scaleLimits.greatest);
    expect(toDrawing(zoomed, size, pointer).x).toBeCloseTo(toDrawing(view, size, pointer).x, 9);
    expect(zoomedAbout(view, size, pointer, 1e-9).scale).toBe(scaleLimits.least);
  });

  it('moves the picture with the pointer', () => {
    const moved = panned(view, 40, -20);
    const mark = toScreen(moved, size, { x: 10, y: 5 });
    expect(mark).toEqual({ x: 440, y: 280 });
  });

  it('shows a whole box with room around it', () => {
    const box = { minX: -5, minY: 0, maxX: 35, maxY: 10 };
    const view = fitted(box, size);
    expect(view.centre).toEqual({ x: 15, y: 5 });
    const seen = visibleBox(view, size);
    expect(seen.minX).toBeLessThan(box.minX);
    expect(seen.maxX).toBeGreaterThan(box.maxX);
    expect(seen.minY).toBeLessThan(box.minY);
    // 40 mm over 84 % of 800 px.
    expect(view.scale).toBeCloseTo(16.8, 12);
  });

  it('shows a box without size without dividing by it', () => {
    const view = fitted({ minX: 1, minY: 2, maxX: 1, maxY: 2 }, size);
    expect(view.centre).toEqual({ x: 1, y: 2 });
    expect(Number.isFinite(view.scale)).toBe(true);
  });

  it('frames a place so that its surroundings are seen too', () => {
    const view = framed({ x: 3, y: 4, reach: 0.5 }, size);
    expect(view.centre).toEqual({ x: 3, y: 4 });
    const seen = visibleBox(view, size);
    expect(seen.maxY - seen.minY).toBeGreaterThan(2 * 0.5);
    expect(seen.maxY - seen.minY).toBeLessThan(4 * 0.5);
  });
});
