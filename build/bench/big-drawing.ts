/** Large drawings for measuring, made up and the same at every call; as DXF text with the groups that programs write. */

export interface BigDrawing {
  readonly name: string;
  readonly text: string;
  readonly entities: number;
}

/** Separate lines: stars of 40 lines each, their lines shuffled among the whole drawing. */
export function stars(entities: number): BigDrawing {
  const lines: string[] = [];
  for (let star = 0; star < entities / 40; star++) {
    const [cx, cy] = [(star % 100) * 30, Math.floor(star / 100) * 30];
    for (let i = 0; i < 40; i++) {
      const [a, b] = [(i * Math.PI) / 20, ((i + 1) * Math.PI) / 20];
      const [r, s] = [10 + (i % 2), 10 + ((i + 1) % 2)];
      lines.push(
        line(cx + r * Math.cos(a), cy + r * Math.sin(a), cx + s * Math.cos(b), cy + s * Math.sin(b)),
      );
    }
  }
  return { name: 'lines in 40-line stars', text: dxf(shuffled(lines)), entities: lines.length };
}

/** One comb of separate lines all round: a single outline. */
export function comb(entities: number): BigDrawing {
  const teeth = Math.floor(entities / 4) - 1;
  const points: [number, number][] = [[0, 0]];
  for (let k = 0; k < teeth; k++) points.push([k + 0.25, 0], [k + 0.25, 3.7], [k + 0.75, 3.7], [k + 0.75, 0]);
  points.push([teeth, 0], [teeth, -5], [0, -5]);
  const lines = points.map(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length] ?? [0, 0];
    return line(x, y, nextX, nextY);
  });
  return { name: 'lines in one comb', text: dxf(shuffled(lines)), entities: lines.length };
}

/** Plates of lines and arcs with slots, and circles for holes: nine contours of 28 entities each. */
export function plates(entities: number): BigDrawing {
  const all: string[] = [];
  for (let plate = 0; all.length < entities; plate++) {
    const [x, y] = [(plate % 100) * 60, Math.floor(plate / 100) * 40];
    all.push(...plateOutline(x, y));
    for (let k = 0; k < 4; k++) all.push(circle(x + 6 + 12.6 * k, y + 24.1, 1.27));
    for (let k = 0; k < 4; k++) all.push(...slot(x + 5.77 + 11.5 * k, y + 9));
  }
  return { name: 'plates, holes and slots', text: dxf(shuffled(all)), entities: all.length };
}

let handle = 256;
const head = (kind: string, layer: string, marker: string): string =>
  `  0\n${kind}\n  5\n${(handle++).toString(16).toUpperCase()}\n100\nAcDbEntity\n  8\n${layer}\n100\n${marker}\n`;

const line = (x0: number, y0: number, x1: number, y1: number): string =>
  `${head('LINE', 'CUT', 'AcDbLine')} 10\n${x0}\n 20\n${y0}\n 30\n0.0\n 11\n${x1}\n 21\n${y1}\n 31\n0.0\n`;

const circle = (x: number, y: number, r: number): string =>
  `${head('CIRCLE', 'HOLES', 'AcDbCircle')} 10\n${x}\n 20\n${y}\n 30\n0.0\n 40\n${r}\n`;

const arc = (x: number, y: number, r: number, from: number, to: number): string =>
  `${head('ARC', 'CUT', 'AcDbCircle')} 10\n${x}\n 20\n${y}\n 30\n0.0\n 40\n${r}\n100\nAcDbArc\n 50\n${from}\n 51\n${to}\n`;

const slot = (x: number, y: number): readonly string[] => [
  line(x, y, x + 4.5, y),
  arc(x + 4.5, y + 2, 2, 270, 90),
  line(x + 4.5, y + 4, x, y + 4),
  arc(x, y + 2, 2, 90, 270),
];

function plateOutline(x: number, y: number): readonly string[] {
  const [w, h, r] = [50.8, 30.48, 3.175];
  return [
    ...[line(x + r, y, x + w - r, y), arc(x + w - r, y + r, r, 270, 0)],
    ...[line(x + w, y + r, x + w, y + h - r), arc(x + w - r, y + h - r, r, 0, 90)],
    ...[line(x + w - r, y + h, x + r, y + h), arc(x + r, y + h - r, r, 90, 180)],
    ...[line(x, y + h - r, x, y + r), arc(x + r, y + r, r, 180, 270)],
  ];
}

/** Entities in the order a drawing has them after years of edits. */
function shuffled(entities: readonly string[]): readonly string[] {
  const all = [...entities];
  let state = 1;
  for (let i = all.length - 1; i > 0; i--) {
    state = (state * 48_271) % 2_147_483_647;
    const j = state % (i + 1);
    [all[i], all[j]] = [all[j] as string, all[i] as string];
  }
  return all;
}

const dxf = (entities: readonly string[]): string =>
  '  0\nSECTION\n  2\nHEADER\n  9\n$INSUNITS\n 70\n4\n  0\nENDSEC\n  0\nSECTION\n  2\nENTITIES\n' +
  `${entities.join('')}  0\nENDSEC\n  0\nEOF\n`;
