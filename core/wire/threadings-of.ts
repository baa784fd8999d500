import type { PassPath, Threading } from '../plan';

/** All passes but the tabs, then, after a stop that holds the piece, the tabs. */
export function threadingsOf(passes: readonly PassPath[]): readonly Threading[] {
  const main = passes.flatMap(({ pass, main: runs }) =>
    runs.map((_, index) => ({ pass, part: 'main' as const, index, stop: null })),
  );
  const tabs = passes
    .flatMap(({ pass, tabs: runs }) =>
      runs.map((_, index) => ({ pass, part: 'tabs' as const, index, stop: null })),
    )
    .map((run, k) => (k === 0 ? { ...run, stop: 'secure the piece before the tab is cut' } : run));
  return [{ start: 0, attended: tabs.length > 0, runs: [...main, ...tabs], after: null }];
}
