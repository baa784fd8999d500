import { offsetRegion } from '../../../core/geometry/offset-region';
import type { Peer } from './peer';

/** Ours: lines and arcs in, lines and arcs out, the preparation of the contour within the time. */
export const ownOffset: Peer = {
  name: 'Diewright',
  takesChords: false,
  prepare: (outline) =>
    Promise.resolve((distance) => {
      const result = offsetRegion([outline], distance);
      return () => result;
    }),
};
