import startClipper2 from 'clipper2-wasm';
import type { Paths64 } from 'clipper2-wasm/dist/clipper2z';
import { asContour, chordPolygon } from './chord-polygon';
import type { Peer } from './peer';

/** clipper2-wasm (Clipper2 in C++, compiled to WebAssembly), on a grid of a nanometre. */
export const clipper2Wasm: Peer = {
  name: 'clipper2-wasm',
  takesChords: true,
  prepare: async (outline, chord) => {
    const clipper2 = await startClipper2();
    const numbers = chordPolygon(outline, chord).flatMap(({ x, y }) => [toGrid(x), toGrid(y)]);
    const paths = new clipper2.Paths64();
    paths.push_back(clipper2.MakePath64(numbers));
    const { Round } = clipper2.JoinType;
    const { Polygon } = clipper2.EndType;
    let result: Paths64 | null = null;
    return (distance) => {
      result?.delete();
      result = clipper2.InflatePaths64(paths, distance * perMm, Round, Polygon, 2, chord * perMm);
      return () => (result ? readPaths(result) : []);
    };
  },
};

const perMm = 1e6;
const toGrid = (mm: number): bigint => BigInt(Math.round(mm * perMm));

const readPaths = (paths: Paths64) =>
  Array.from({ length: paths.size() }, (_, i) => {
    const path = paths.get(i);
    return asContour(
      Array.from({ length: path.size() }, (_point, k) => {
        const { x, y } = path.get(k);
        return { x: Number(x) / perMm, y: Number(y) / perMm };
      }),
    );
  });
