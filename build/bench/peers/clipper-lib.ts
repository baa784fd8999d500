import ClipperLib from 'clipper-lib';
import { asContour, chordPolygon } from './chord-polygon';
import type { Peer } from './peer';

/** clipper-lib (Clipper 6 in JavaScript), on the finest grid on which it still computes with plain numbers. */
export const clipperLib: Peer = {
  name: 'clipper-lib',
  takesChords: true,
  prepare: (outline, chord) => {
    const points = chordPolygon(outline, chord);
    const farthest = points.reduce((most, { x, y }) => Math.max(most, Math.abs(x), Math.abs(y)), 1);
    const perMm = Math.min(finestPerMm, plainNumberLimit / (farthest + 1));
    const path = points.map(({ x, y }) => ({ X: Math.round(x * perMm), Y: Math.round(y * perMm) }));
    return Promise.resolve((distance) => {
      const offset = new ClipperLib.ClipperOffset(2, chord * perMm);
      offset.AddPath(path, ClipperLib.JoinType.jtRound, ClipperLib.EndType.etClosedPolygon);
      const result: { X: number; Y: number }[][] = [];
      offset.Execute(result, distance * perMm);
      return () => result.map((loop) => asContour(loop.map(({ X, Y }) => ({ x: X / perMm, y: Y / perMm }))));
    });
  },
};

const finestPerMm = 1e6;
/** Beyond 47 million clipper-lib goes over to big integers, ten times slower. */
const plainNumberLimit = 46_000_000;
