import { describe, expect, it } from 'vitest';
import { noChoice } from '../../../core/cut-settings';
import { newJob } from '../../../core/job';
import { clearCut, setCut, withChange } from '../../../renderer/state/edits/set-cut';

const job = newJob('a.dxf', '');

describe('what is chosen for one cut', () => {
  it('is kept by its id, one stretch beside the others', () => {
    const once = setCut.apply(job, { cutId: 'a', stretch: { number: 1, change: { hole: { x: 1, y: 2 } } } });
    const twice = setCut.apply(once, { cutId: 'a', change: { tabs: 2 } });
    expect(twice.cuts['a']?.tabs).toBe(2);
    expect(twice.cuts['a']?.stretches.map(({ hole }) => hole)).toEqual([null, { x: 1, y: 2 }]);
    expect(Object.keys(setCut.apply(twice, { cutId: 'b', change: { fromEdge: true } }).cuts)).toEqual([
      'a',
      'b',
    ]);
  });

  it('leaves nothing behind when it is given back, bit by bit or at once', () => {
    const chosen = setCut.apply(job, { cutId: 'a', stretch: { number: 2, change: { tabLength: 3 } } });
    expect(
      setCut.apply(chosen, { cutId: 'a', stretch: { number: 2, change: { tabLength: null } } }).cuts,
    ).toEqual({});
    expect(clearCut.apply(chosen, 'a').cuts).toEqual({});
  });

  it('merges turns of one value and names what was changed', () => {
    const hole = { cutId: 'a', stretch: { number: 0, change: { hole: { x: 0, y: 0 } } } };
    const place = { cutId: 'a', stretch: { number: 0, change: { place: { x: 0, y: 0 } } } };
    expect(setCut.part?.(hole)).not.toBe(setCut.part?.(place));
    expect(setCut.part?.(hole)).not.toBe(setCut.part?.({ ...hole, stretch: { ...hole.stretch, number: 1 } }));
    expect(setCut.label(hole, job)).toBe('Start hole of a');
    expect(setCut.label({ cutId: 'a', change: { slug: 'kept' } }, job)).toBe('Slug of a');
  });

  it('does not change what it is made from', () => {
    const changed = withChange(noChoice, { stretch: { number: 0, change: { tabLength: 1 } } });
    expect(changed.stretches).toHaveLength(1);
    expect(noChoice.stretches).toEqual([]);
  });
});
