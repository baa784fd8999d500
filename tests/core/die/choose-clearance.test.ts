import { describe, expect, it } from 'vitest';
import { chooseClearance, type ClearanceRule } from '../../../core/die/choose-clearance';

const steel = { material: 'cold-rolled-soft', thickness: 1.5 };

function chosen(rule: ClearanceRule, stock = steel) {
  const reply = chooseClearance(rule, stock);
  if (!reply.ok) throw new Error(reply.problem.what);
  return reply.value;
}

function problem(rule: ClearanceRule, stock = steel) {
  const reply = chooseClearance(rule, stock);
  if (reply.ok) throw new Error(`Accepted: ${reply.value.choice.perSide}`);
  return reply.problem;
}

describe('chooseClearance', () => {
  it('takes the fraction of the table and says from which book', () => {
    const { choice, notes } = chosen({ rule: 'table' });
    expect(choice.perSide).toBeCloseTo(0.09, 12);
    expect(choice.reason).toContain('0.06 × thickness');
    expect(choice.reason).toContain('Groover');
    expect(choice.effect).toMatch(/edge type [34]/);
    expect(notes).toEqual([]);
  });

  it('says when a row is recalled from memory', () => {
    const { choice } = chosen({ rule: 'table' }, { material: 'steel-hard-rolled', thickness: 1.4 });
    expect(choice.perSide).toBeCloseTo(0.1, 12);
    expect(choice.reason).toContain('from memory');
  });

  it('takes a typed length and a typed percentage as they are', () => {
    expect(chosen({ rule: 'typed', perSide: 0.075 }).choice).toMatchObject({
      perSide: 0.075,
      reason: 'typed, 5 % of the thickness',
    });
    expect(chosen({ rule: 'percent', percent: 4 }).choice.perSide).toBeCloseTo(0.06, 12);
  });

  it('needs no known material where the clearance is typed', () => {
    const unknown = { material: 'moon-cheese', thickness: 1 };
    expect(chosen({ rule: 'typed', perSide: 0.05 }, unknown).choice.perSide).toBe(0.05);
    const refused = problem({ rule: 'table' }, unknown);
    expect(refused.code).toBe('stock-unknown');
    expect(refused.what).toContain('moon-cheese');
    expect(refused.whatToDo).toContain('cold-rolled-soft');
  });

  it.each([0, -1, Number.NaN, Infinity])('refuses a thickness of %s', (thickness) => {
    const refused = problem({ rule: 'percent', percent: 5 }, { material: 'brass', thickness });
    expect(refused.code).toBe('stock-thickness');
    expect(refused.where).toBe('stock thickness');
  });

  it.each([0, -0.05, Number.NaN, Infinity])('refuses a clearance of %s', (value) => {
    expect(problem({ rule: 'typed', perSide: value }).code).toBe('clearance-not-positive');
    expect(problem({ rule: 'percent', percent: value }).code).toBe('clearance-not-positive');
  });

  // Usual range 2 to 10 %: Kalpakjian & Schmid, 6th ed. SI, figure 16.3.
  it.each([2, 6, 10])('finds nothing unusual in %s %%, limits included', (percent) => {
    for (const thickness of [0.1, 0.3, 0.7, 1, 1.5, 3.2]) {
      expect(chosen({ rule: 'percent', percent }, { material: 'brass', thickness }).notes).toEqual([]);
      const perSide = (percent / 100) * thickness;
      expect(chosen({ rule: 'typed', perSide }, { material: 'brass', thickness }).notes).toEqual([]);
    }
  });

  it.each([
    [1.9, 'smaller'],
    [10.1, 'larger'],
  ])('notes that %s %% is %s than usual, with the numbers in mm and inch', (percent, word) => {
    const [unusual] = chosen({ rule: 'percent', percent }, { material: 'brass', thickness: 2 }).notes;
    expect(unusual?.weight).toBe('note');
    expect(unusual?.code).toBe('clearance-unusual');
    expect(unusual?.title).toContain(word);
    expect(unusual?.message).toMatch(/ mm .* in\)/);
    expect(unusual?.numbers[0]?.value).toBeCloseTo((percent / 100) * 2, 12);
    expect(unusual?.cures[0]?.say).toMatch(/0\.04 mm .* and 0\.2 mm/);
  });

  it('asks for a reason where it is wider than any edge type wants', () => {
    const weight = (percent: number) => chosen({ rule: 'percent', percent }).notes[0]?.weight;
    expect([weight(25), weight(26), weight(60)]).toEqual(['note', 'decide', 'decide']);
  });

  it('gives the same note the same key, another number another key', () => {
    const key = (percent: number) => chosen({ rule: 'percent', percent }).notes[0]?.key;
    expect(key(12)).toBe(key(12));
    expect(key(12)).not.toBe(key(13));
  });
});
