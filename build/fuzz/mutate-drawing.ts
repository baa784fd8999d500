import { hostileDrawings } from './hostile-drawings';
import { SeededRandom } from './seeded-random';

/**
 * A damaged or hostile drawing, the same for the same seed: a real file with bytes, groups and lines changed, or one
 * made to hurt. `size` bounds how large the latter get.
 */
export function mutatedDrawing(sources: readonly Uint8Array[], seed: number, size = 20_000): Uint8Array {
  const random = new SeededRandom(seed);
  if (random.below(12) === 0) {
    const text = random.pick(hostileDrawings)(random, 2 + random.below(size));
    return latin(random.below(3) === 0 ? changedGroups(random, text) : text);
  }
  const source = random.pick(sources);
  const change = random.below(5);
  if (change === 0) return changedBytes(random, source);
  if (change === 1) return source.slice(0, random.below(source.length));
  const text = Array.from(source, (byte) => String.fromCharCode(byte)).join('');
  const changed = change === 2 ? changedLines(random, text) : changedGroups(random, text);
  return latin(random.below(6) === 0 ? changed.slice(0, random.below(changed.length)) : changed);
}

const latin = (text: string): Uint8Array => Uint8Array.from(text, (c) => c.charCodeAt(0) & 255);

function changedBytes(random: SeededRandom, source: Uint8Array): Uint8Array {
  const bytes = Array.from(source);
  const count = 1 + random.below(random.pick([3, 30, 300]));
  for (let i = 0; i < count && bytes.length > 0; i++) {
    const at = random.below(bytes.length);
    const what = random.below(4);
    if (what === 0) bytes.splice(at, 1 + random.below(9));
    else if (what === 1) bytes.splice(at, 0, random.below(256));
    else bytes[at] = what === 2 ? random.below(256) : (bytes[at] as number) ^ (1 << random.below(8));
  }
  return Uint8Array.from(bytes);
}

/** Lines left out, doubled, exchanged; a stretch of the file put in once more. */
function changedLines(random: SeededRandom, text: string): string {
  const lines = text.split('\n');
  const count = 1 + random.below(random.pick([2, 20]));
  for (let i = 0; i < count; i++) {
    const [at, other] = [random.below(lines.length), random.below(lines.length)];
    const what = random.below(4);
    if (what === 0) lines.splice(at, 1 + random.below(4));
    else if (what === 1) lines.splice(at, 0, lines[other] ?? '');
    else if (what === 2) [lines[at], lines[other]] = [lines[other] ?? '', lines[at] ?? ''];
    else lines.splice(at, 0, ...lines.slice(other, other + 2 * random.below(40)));
  }
  return lines.join('\n');
}

/** Group codes and values exchanged for such as hurt. */
function changedGroups(random: SeededRandom, text: string): string {
  const lines = text.split('\n');
  const count = 1 + random.below(random.pick([2, 20, 200]));
  for (let i = 0; i < count; i++) {
    const pair = 2 * random.below(Math.max(1, lines.length >> 1));
    if (random.below(4) === 0) lines[pair] = String(random.pick(codes));
    else lines[pair + 1] = random.pick(values);
  }
  return lines.join('\n');
}

const codes = [
  ...[
    -5, 0, 1, 2, 5, 6, 8, 10, 11, 12, 13, 20, 21, 30, 40, 41, 42, 43, 44, 45, 48, 50, 51, 60, 62, 66, 67, 70,
  ],
  ...[
    71, 72, 73, 74, 75, 90, 91, 92, 93, 94, 95, 96, 97, 98, 100, 101, 102, 210, 220, 230, 330, 420, 999, 1001,
    99_999,
  ],
];

const values = [
  ...[
    '0',
    '1',
    '-1',
    '2',
    '3',
    '64',
    '255',
    '256',
    '1000000',
    '2147483647',
    '-2147483648',
    '9999999999',
    '99999999999',
  ],
  ...[
    '1e308',
    '-1e308',
    '1e309',
    '1e-308',
    '1e9',
    '1e8',
    '-0',
    '0.0000001',
    'nan',
    'NaN',
    'inf',
    '-inf',
    '1,5',
    '1D2',
  ],
  ...[
    '',
    ' ',
    'x',
    'SECTION',
    'ENDSEC',
    'ENTITIES',
    'BLOCKS',
    'TABLES',
    'EOF',
    'BLOCK',
    'ENDBLK',
    'INSERT',
    'VERTEX',
  ],
  ...[
    'SEQEND',
    'POLYLINE',
    'LWPOLYLINE',
    'SPLINE',
    'HATCH',
    'MLINE',
    'SOLID',
    'DIMENSION',
    'LINE',
    'ARC',
    'CIRCLE',
  ],
  ...[
    'ELLIPSE',
    'REGION',
    '*Model_Space',
    '__proto__',
    'constructor',
    '%%c',
    '\\U+0000',
    '\u0000',
    '\u00ff\u00fe',
  ],
];
