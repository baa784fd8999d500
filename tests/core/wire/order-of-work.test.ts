import { describe, expect, it } from 'vitest';
import { orderOfWork, type OrderedThreading, type OrderQuery } from '../../../core/wire/order-of-work';

/** "0 main> | tab! <": pass, part and way of each run; a bar before what comes after a stop. */
const words = (threadings: readonly OrderedThreading[]): readonly string[] =>
  threadings.map(({ start, runs }) =>
    [
      `at ${start}:`,
      ...runs.map(
        ({ pass, part, index, isRound, forwards, stop }) =>
          `${stop === null ? '' : '| '}${part === 'tabs' ? 'tab' : isRound ? 'round' : 'main'}${index}.${pass}${forwards ? '>' : '<'}`,
      ),
    ].join(' '),
  );

const order = (query: Partial<OrderQuery>) =>
  orderOfWork({ tabs: 1, passes: 3, slug: 'kept', sequence: 'part by part', ...query });

describe('orderOfWork', () => {
  it('kept: roughing and skims but the tab, a stop, cut off and skim of the tab', () => {
    expect(words(order({}))).toEqual(['at 0: main0.0> main0.1< main0.2> | tab0.0> tab0.1< tab0.2>']);
    // After an even number of passes the wire waits at the begin.
    expect(words(order({ passes: 2 }))).toEqual(['at 0: main0.0> main0.1< | tab0.0< tab0.1>']);
  });

  it('dropped: roughed, cut off, the slug taken out, then skims all round', () => {
    const threadings = order({ slug: 'dropped' });
    expect(words(threadings)).toEqual(['at 0: main0.0> | tab0.0>', 'at 0: round0.1> round0.2<']);
    expect(threadings.map(({ after }) => after)).toEqual(['take the slug out', null]);
    expect(threadings.map(({ attended }) => attended)).toEqual([true, false]);
  });

  it('roughing first: the tab is a threading of its own, from the hole beside it', () => {
    const threadings = order({ sequence: 'roughing first' });
    expect(words(threadings)).toEqual([
      'at 0: main0.0> main0.1< main0.2>',
      'at 0: | tab0.0< tab0.1> tab0.2<',
    ]);
    expect(threadings.map(({ attended }) => attended)).toEqual([false, true]);
  });

  it('several tabs: a hole for every stretch, and each tab from the hole behind it', () => {
    expect(words(order({ tabs: 3, passes: 1, slug: 'dropped' }))).toEqual([
      'at 0: main0.0>',
      'at 1: main1.0>',
      'at 2: main2.0>',
      'at 1: | tab0.0<',
      'at 2: | tab1.0<',
      'at 0: | tab2.0<',
    ]);
  });

  it('without a tab every pass runs all round', () => {
    expect(words(order({ tabs: 0 }))).toEqual(['at 0: round0.0> round0.1< round0.2>']);
  });

  it('cuts every part in every pass once, and stops before a piece comes loose', () => {
    for (const tabs of [0, 1, 2, 5]) {
      for (const passes of [1, 2, 3, 4]) {
        for (const slug of ['kept', 'dropped'] as const) {
          for (const sequence of ['part by part', 'roughing first'] as const) {
            const runs = order({ tabs, passes, slug, sequence }).flatMap((threading) => threading.runs);
            for (let pass = 0; pass < passes; pass++) {
              const own = runs.filter((run) => run.pass === pass);
              const round = tabs === 0 || (slug === 'dropped' && pass > 0);
              expect(own).toHaveLength(round ? 1 : 2 * tabs);
              expect(new Set(own.map(({ part, index }) => `${part}${index}`)).size).toBe(own.length);
            }
            const firstTab = runs.findIndex(({ part }) => part === 'tabs');
            if (tabs > 0) expect(runs[firstTab]?.stop).toContain('secure');
          }
        }
      }
    }
  });
});
