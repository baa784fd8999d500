import jscadModeling from '@jscad/modeling';
import { asContour, chordPolygon, chordsOfTurn } from './chord-polygon';
import type { Peer } from './peer';

const { geom2 } = jscadModeling.geometries;

/** @jscad/modeling: parallels with round corners, joined one after the other. */
export const jscad: Peer = {
  name: '@jscad/modeling',
  takesChords: true,
  prepare: (outline, chord) => {
    const shape = geom2.fromPoints(chordPolygon(outline, chord).map(({ x, y }) => [x, y]));
    return Promise.resolve((distance) => {
      const segments = chordsOfTurn(chord, distance);
      const result = jscadModeling.expansions.offset({ delta: distance, corners: 'round', segments }, shape);
      return () => geom2.toOutlines(result).map((loop) => asContour(loop.map(([x, y]) => ({ x, y }))));
    });
  },
};
