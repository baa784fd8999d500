import type { Vertex } from '../geometry/contour';
import type { Piece } from './raw-drawing';
import type { Strand } from './strand';

/** All lines of a drawing on one layer, in one colour, packed so that hundreds of thousands can be handed over. */
export interface Linework {
  readonly layer: string;
  readonly colour: number;
  /** Why they are not shown unless chosen; null where they are. */
  readonly hidden: Piece['hidden'];
  readonly isFilling: boolean;
  /** x, y and bulge of each vertex, mm, one run behind the other. */
  readonly vertices: Float64Array;
  /** The vertex that each run begins with, and last how many there are. */
  readonly starts: Uint32Array;
}

/** The lines of pieces by layer, colour and what hides them, in the order in which these first occur. */
export function lineworkOf(drawn: readonly { readonly piece: Piece; readonly strand: Strand }[]): Linework[] {
  const groups = new Map<string, { piece: Piece; strands: Strand[] }>();
  for (const { piece, strand } of drawn) {
    const { layer, colour, hidden, isFilling } = piece;
    const key = JSON.stringify([layer, colour, hidden, isFilling]);
    const known = groups.get(key);
    if (known) known.strands.push(strand);
    else groups.set(key, { piece, strands: [strand] });
  }
  return [...groups.values()].map(({ piece: { layer, colour, hidden, isFilling }, strands }) => ({
    layer,
    colour,
    hidden,
    isFilling,
    ...packed(strands),
  }));
}

function packed(strands: readonly Strand[]): Pick<Linework, 'vertices' | 'starts'> {
  const total = strands.reduce((sum, { chain }) => sum + chain.length, 0);
  const vertices = new Float64Array(3 * total);
  const starts = new Uint32Array(strands.length + 1);
  let at = 0;
  strands.forEach(({ chain }, i) => {
    starts[i] = at / 3;
    for (const { x, y, bulge } of chain) {
      vertices[at++] = x;
      vertices[at++] = y;
      vertices[at++] = bulge;
    }
  });
  starts[strands.length] = total;
  return { vertices, starts };
}

/** Each run of packed lines as vertices again. */
export function* runsOf({ vertices, starts }: Linework): Generator<readonly Vertex[]> {
  for (let i = 0; i + 1 < starts.length; i++) {
    const run: Vertex[] = [];
    for (let v = starts[i] as number; v < (starts[i + 1] as number); v++) {
      run.push({
        x: vertices[3 * v] as number,
        y: vertices[3 * v + 1] as number,
        bulge: vertices[3 * v + 2] as number,
      });
    }
    yield run;
  }
}
