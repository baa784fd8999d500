import { describe, expect, it } from 'vitest';
import {
  newHistory,
  record,
  redoLabel,
  redone,
  sealed,
  undoLabel,
  undone,
} from '../../../renderer/state/history';

describe('history', () => {
  it('goes back and forth through labelled steps', () => {
    const start = newHistory('a');
    const third = record(record(start, 'b', 'to b'), 'c', 'to c');
    expect(undoLabel(third)).toBe('to c');
    const back = undone(undone(third));
    expect(back.present).toBe('a');
    expect([undoLabel(back), redoLabel(back)]).toEqual([null, 'to b']);
    const forth = redone(redone(back));
    expect(forth.present).toBe('c');
    expect([undoLabel(forth), redoLabel(forth)]).toEqual(['to c', null]);
  });

  it('forgets what was undone once something else is done', () => {
    const history = record(undone(record(newHistory('a'), 'b', 'to b')), 'x', 'to x');
    expect(redoLabel(history)).toBeNull();
    expect(undone(history).present).toBe('a');
  });

  it('does nothing at either end', () => {
    const history = newHistory('a');
    expect(undone(history)).toBe(history);
    expect(redone(history)).toBe(history);
  });

  it('makes no step of no change', () => {
    const history = newHistory('a');
    expect(record(history, 'a', 'to a')).toBe(history);
  });

  it('joins a run of changes to the same thing', () => {
    let history = newHistory(1);
    for (const value of [2, 3, 4]) history = record(history, value, 'turn the wire', 'wire');
    expect(history.past).toHaveLength(1);
    expect(undone(history).present).toBe(1);
  });

  it('does not join across another thing, a seal or an undo', () => {
    const turned = record(newHistory(1), 2, 'turn', 'wire');
    expect(record(turned, 3, 'turn', 'gap').past).toHaveLength(2);
    expect(record(sealed(turned), 3, 'turn', 'wire').past).toHaveLength(2);
    const backAndForth = redone(undone(turned));
    expect(record(backAndForth, 3, 'turn', 'wire').past).toHaveLength(2);
    expect(record(turned, 3, 'type').past).toHaveLength(2);
  });

  it('keeps five hundred steps', () => {
    let history = newHistory(0);
    for (let value = 1; value <= 600; value++) history = record(history, value, `to ${value}`);
    expect(history.past).toHaveLength(500);
    expect(history.past[0]?.value).toBe(100);
  });
});
