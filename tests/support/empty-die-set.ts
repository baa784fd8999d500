import type { DieSet } from '../../core/die/die-set';

/** A die set of which nothing has been worked out. */
export const emptyDieSet: DieSet = {
  arrangement: 'simple',
  tools: [],
  walls: [],
  strip: null,
  sections: [],
  oneBlocks: [],
};
