import type { SeededRandom } from './seeded-random';

/** Drawings that are whole files and still meant badly: each a shape that a careless reader takes for ever over. */
export const hostileDrawings: readonly ((random: SeededRandom, size: number) => string)[] = [
  arrayInArray,
  blocksInACircle,
  deepBlocks,
  star,
  sameLine,
  sameCircle,
  concentric,
  thereAndBack,
  doubledGrid,
  crossingLines,
  dust,
  oneLongSpline,
  hugeCounts,
  zigzag,
  manyLayers,
  touchingChain,
  deepSvg,
  longSvgPath,
];

const dxf = (entities: string, blocks = ''): string =>
  `0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;

const line = (x0: number, y0: number, x1: number, y1: number): string =>
  `0\nLINE\n8\n0\n10\n${x0}\n20\n${y0}\n11\n${x1}\n21\n${y1}\n`;
const circle = (x: number, y: number, r: number): string => `0\nCIRCLE\n8\n0\n10\n${x}\n20\n${y}\n40\n${r}\n`;
const insert = (name: string, more = ''): string => `0\nINSERT\n8\n0\n2\n${name}\n10\n0\n20\n0\n${more}`;
const block = (name: string, entities: string): string =>
  `0\nBLOCK\n2\n${name}\n10\n0\n20\n0\n30\n0\n70\n0\n${entities}0\nENDBLK\n`;
const many = (count: number, make: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => make(i)).join('');
const polyline = (points: readonly (readonly [number, number])[], closed: boolean): string =>
  `0\nLWPOLYLINE\n8\n0\n90\n${points.length}\n70\n${closed ? 1 : 0}\n${points.map(([x, y]) => `10\n${x}\n20\n${y}\n`).join('')}`;

function arrayInArray(random: SeededRandom, size: number): string {
  const counts = `70\n${size}\n71\n${size}\n44\n${random.pick([0, 1, 1e-9])}\n45\n2\n`;
  return dxf(insert('B', counts), block('A', circle(0, 0, 1)) + block('B', insert('A', counts)));
}

function blocksInACircle(): string {
  return dxf(
    insert('A'),
    block('A', insert('B') + circle(0, 0, 1)) + block('B', insert('C')) + block('C', insert('A')),
  );
}

function deepBlocks(random: SeededRandom, size: number): string {
  const fold = random.pick([1, 2]);
  const blocks = many(Math.min(size, 200), (i) =>
    block(`B${i}`, many(fold, () => insert(`B${i + 1}`)) + circle(i, 0, 1)),
  );
  return dxf(insert('B0'), blocks);
}

function star(random: SeededRandom, size: number): string {
  const closed = random.below(2) === 0;
  return dxf(
    many(size, (i) => {
      const [a, b] = [(i * 2 * Math.PI) / size, ((i + 0.5) * 2 * Math.PI) / size];
      const [x, y, u, v] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)].map((c) => c * 50) as [
        number,
        number,
        number,
        number,
      ];
      return line(0, 0, x, y) + (closed ? line(x, y, u, v) + line(u, v, 0, 0) : '');
    }),
  );
}

const sameLineAt = (size: number): string => many(size, (i) => line(0, 0, 10 + (i % 3) / 1e5, 0));

function sameLine(_random: SeededRandom, size: number): string {
  return dxf(sameLineAt(size) + circle(5, 5, 2));
}

function sameCircle(random: SeededRandom, size: number): string {
  const step = random.pick([0, 1e-7, 1e-3]);
  return dxf(many(size, (i) => circle(i * step, 0, 5)));
}

function concentric(_random: SeededRandom, size: number): string {
  return dxf(many(size, (i) => circle(0, 0, 1 + i * 0.01)));
}

function thereAndBack(_random: SeededRandom, size: number): string {
  const there = Array.from({ length: size }, (_, i) => [i, i % 2] as const);
  return dxf(polyline([...there, ...[...there].reverse()], true) + circle(0, -50, 5));
}

function doubledGrid(random: SeededRandom, size: number): string {
  const side = Math.max(2, Math.floor(Math.sqrt(size / 4)));
  const copies = random.pick([1, 2]);
  return dxf(
    many(side * side, (i) => {
      const [x, y] = [i % side, Math.floor(i / side)];
      return many(copies, () => line(x, y, x + 1, y) + line(x, y, x, y + 1));
    }),
  );
}

function crossingLines(_random: SeededRandom, size: number): string {
  const count = Math.min(size, 1500);
  return dxf(
    many(count, (i) =>
      polyline(
        [
          [i, 0],
          [count - i, 100],
          [i + 0.3, 100],
        ],
        true,
      ),
    ),
  );
}

/** All within less than the gap. */
function dust(random: SeededRandom, size: number): string {
  const spread = random.pick([1e-8, 1e-4, 1e-2]);
  return dxf(
    many(size, () =>
      line(random.next() * spread, random.next() * spread, random.next() * spread, 10 * spread),
    ) + circle(0, 0, 9),
  );
}

function oneLongSpline(random: SeededRandom, size: number): string {
  const degree = random.pick([1, 3, 11]);
  const count = Math.min(size, 4000);
  const knots = [
    ...new Array<number>(degree).fill(0),
    ...Array.from({ length: count - degree + 1 }, (_, i) => i),
    ...new Array<number>(degree).fill(count - degree),
  ];
  const wild = random.below(2) === 0;
  return dxf(
    `0\nSPLINE\n8\n0\n70\n8\n71\n${degree}\n${knots.map((k) => `40\n${k}\n`).join('')}${many(count, (i) => `10\n${wild ? random.next() * 1000 : i}\n20\n${wild ? random.next() * 1000 : i % 2}\n`)}`,
  );
}

function hugeCounts(random: SeededRandom): string {
  const count = random.pick([1e6, 2_147_483_647, 9_999_999_999]);
  const hatch = `0\nHATCH\n8\n0\n91\n${count}\n92\n${random.pick([1, 2, 7])}\n72\n1\n73\n1\n93\n${count}\n10\n0\n20\n0\n`;
  return dxf(
    `${hatch}0\nLWPOLYLINE\n90\n${count}\n70\n1\n10\n0\n20\n0\n10\n1\n20\n0\n10\n1\n20\n1\n0\nMLINE\n72\n${count}\n73\n${count}\n11\n0\n21\n0\n`,
  );
}

/** A contour that crosses itself as often as it can. */
function zigzag(_random: SeededRandom, size: number): string {
  const count = Math.min(size, 1200);
  return dxf(
    polyline(
      Array.from({ length: count }, (_, i) => [(i * 7919) % 997, (i * 104_729) % 991] as const),
      true,
    ),
  );
}

function manyLayers(_random: SeededRandom, size: number): string {
  return dxf(
    many(
      size,
      (i) =>
        circle((i % 100) * 3, Math.floor(i / 100) * 3, 1).replace('8\n0', `8\nL${i}`) +
        `0\nTEXT\n8\nT${i}\n10\n${i}\n20\n0\n1\nx\n`,
    ),
  );
}

/** Squares in a row, each touching the next at a corner or along an edge. */
function touchingChain(random: SeededRandom, size: number): string {
  const dy = random.pick([0, 1, 0.5]);
  return dxf(
    many(size, (i) =>
      polyline(
        [
          [i, i * dy],
          [i + 1, i * dy],
          [i + 1, i * dy + 1],
          [i, i * dy + 1],
        ],
        true,
      ),
    ),
  );
}

function deepSvg(_random: SeededRandom, size: number): string {
  return `<svg width="10mm" viewBox="0 0 10 10">${'<g transform="translate(1)">'.repeat(size)}<circle r="3"/>${'</g>'.repeat(size)}</svg>`;
}

function longSvgPath(random: SeededRandom, size: number): string {
  const command = random.pick(['L', 'C1 1 2 2 ', 'A5 5 0 0 1 ', 'T', 'Q5 5 ']);
  return `<svg><path d="M0 0${many(size, (i) => `${command}${i % 50} ${i % 7}`)}z"/></svg>`;
}
