import { SeededRandom } from './seeded-random';

/**
 * A damaged or hostile text, the same for the same seed: values exchanged for such as hurt, lines left out or doubled,
 * bytes changed, broken off, or brackets without end.
 */
export function mutatedText(sources: readonly string[], seed: number): Uint8Array {
  const random = new SeededRandom(seed);
  const source = random.pick(sources);
  switch (random.below(8)) {
    case 0:
      return changedBytes(random, source);
    case 1:
      return utf8(source.slice(0, random.below(source.length)));
    case 2:
      return utf8(changedLines(random, source));
    case 3:
      return utf8(hostile(random, source));
    default: {
      const changed = changedValues(random, source);
      return utf8(random.below(8) === 0 ? changed.slice(0, random.below(changed.length)) : changed);
    }
  }
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function changedBytes(random: SeededRandom, source: string): Uint8Array {
  const bytes = utf8(source);
  for (let count = 1 + random.below(random.pick([3, 30])); count > 0; count--) {
    const at = random.below(bytes.length);
    bytes[at] = random.below(2) === 0 ? random.below(256) : (bytes[at] ?? 0) ^ (1 << random.below(8));
  }
  return bytes;
}

function changedLines(random: SeededRandom, source: string): string {
  const lines = source.split('\n');
  for (let count = 1 + random.below(random.pick([2, 10])); count > 0; count--) {
    const [at, other] = [random.below(lines.length), random.below(lines.length)];
    const what = random.below(3);
    if (what === 0) lines.splice(at, 1 + random.below(4));
    else if (what === 1) lines.splice(at, 0, lines[other] ?? '');
    else [lines[at], lines[other]] = [lines[other] ?? '', lines[at] ?? ''];
  }
  return lines.join('\n');
}

/** Numbers, words in quotes, truth values and names exchanged for such as hurt. */
function changedValues(random: SeededRandom, source: string): string {
  const places = [...source.matchAll(/"(?:[^"\\]|\\.)*"|-?\d+(?:\.\d+)?(?:e[-+]?\d+)?|true|false|null/gi)];
  if (places.length === 0) return source + random.pick(values);
  const chosen = new Set<number>();
  for (let count = 1 + random.below(random.pick([1, 3, 12])); count > 0; count--)
    chosen.add(random.below(places.length));
  let text = '';
  let from = 0;
  places.forEach((place, i) => {
    if (!chosen.has(i)) return;
    text += source.slice(from, place.index) + valueFor(random, place[0]);
    from = place.index + place[0].length;
  });
  return text + source.slice(from);
}

/** Mostly another value of the same kind, so that what is changed gets past the first look. */
function valueFor(random: SeededRandom, was: string): string {
  if (/^-?\d/.test(was) && random.below(12) !== 0) return random.pick(numbers);
  if (was.startsWith('"') && random.below(8) !== 0) return random.pick(words);
  return random.pick(values);
}

const numbers = [
  ...['0', '-0', '1', '-1', '2', '0.5', '1e-9', '1e-300', '5e-324', '1e5', '1e9', '1e20', '1e308', '1e999'],
  ...[
    '-1e308',
    '0.001',
    '0.02',
    '0.1',
    '0.25',
    '3',
    '25',
    '1000',
    '100000',
    '2147483648',
    '9007199254740993',
  ],
];
const words = [
  ...[
    '""',
    '" "',
    '"\\u0000"',
    '"__proto__"',
    '"constructor"',
    '"mm"',
    '"inch"',
    '"table"',
    '"typed"',
    '"G01"',
  ],
  ...['"M30"', '"(%"', '"\\ud800"', '"{unit}"', '"c1"', '"die"', `"${'x'.repeat(5000)}"`],
];
const values = [
  ...['null', 'true', 'false', '[]', '{}', '[[]]', '[null]', '{"__proto__": 1}', '"', '-', ',', ';', 'nan'],
  ...['Infinity', '1.', '.5', '01', '0x10', '1,5', '1e', '//', '/*', '#', '\t', '\\', '<a>', '&amp;', '%'],
];

function hostile(random: SeededRandom, source: string): string {
  const many = random.pick([3, 300, 20_000]);
  switch (random.below(6)) {
    case 0:
      return random.pick(['[', '{"a":', '(', '<g>', '"']).repeat(many);
    case 1:
      return source.replace(random.pick(['{', '[', '<', '(']), (sign) => sign.repeat(many));
    case 2:
      return source + source;
    case 3:
      return random.pick(['', ' ', '\n', '\u{feff}', '\u0000']).repeat(many);
    case 4:
      // A list with one of its parts over and over.
      return source.replace(
        /\[\s*(\{[^[\]{}]*\})/,
        (_, part: string) => `[${`${part},`.repeat(many)}${part}`,
      );
    default:
      return `${random.pick(['1,2\n', 'G1 X1 Y1\n', 'x;y\n1;2\n', '0 0 '])}`.repeat(many);
  }
}
