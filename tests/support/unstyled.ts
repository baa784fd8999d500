import type { ProgramStyle } from '../../core/program-style';

/**
 * A program in a style as one in the neutral words that readProgram of these tests reads: written from what the
 * standards say of each word, sharing nothing with the writer. `unit` is needed where numbers have no point. An arc by
 * its radius gets its centre by NIST IR 6556, section 3.5.3.1: a positive R turns at most half round.
 */
export function unstyled(text: string, style: ProgramStyle, unit: 'mm' | 'inch'): string {
  const end = style.lineEnd === 'CRLF' ? '\r\n' : '\n';
  if (style.lineEnd === 'LF' && text.includes('\r')) throw new Error('A line ends in CR');
  const lines = text.split(end);
  if (lines.pop() !== '') throw new Error('The last line has no end');
  const whole = new Set([...style.before, ...style.after]);
  const state: State = { motion: '', x: 0, y: 0 };
  const bare = lines.filter((line) => !whole.has(line));
  return ['%', ...bare.map((line) => neutralLine(line, style, unit, state)), ''].join('\n');
}

interface State {
  motion: string;
  x: number;
  y: number;
}

const lengths = 'XYIJRF';

function neutralLine(line: string, style: ProgramStyle, unit: 'mm' | 'inch', state: State): string {
  const comments: string[] = [];
  const pattern = style.comments.signs === 'brackets' ? /\(([^()]*)\)/g : /;(.*)$/g;
  const words = line.replace(pattern, (_, said: string) => {
    comments.push(said.trim());
    return '';
  });
  const values = new Map<string, number>();
  const codes: string[] = [];
  const left = words.replace(/([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/g, (_, letter: string, number: string) => {
    if (letter === 'G' || letter === 'M') codes.push(neutralCode(letter, number));
    else values.set(letter, lengthOf(letter, number, style, unit));
    return '';
  });
  if (left.trim() !== '') throw new Error(`Not words: ${left} in ${line}`);
  if (!style.spaces && / [XYIJRF]/.test(words)) throw new Error(`Spaces in ${line}`);
  return [...wordsOf(codes, values, style, state), ...comments.map((said) => `(${said})`)].join(' ');
}

function neutralCode(letter: string, number: string): string {
  const dialect: Readonly<Record<string, string>> = { G20: 'G70', G21: 'G71' };
  const code = `${letter}${number.padStart(2, '0')}`;
  return dialect[code] ?? code;
}

function lengthOf(letter: string, number: string, style: ProgramStyle, unit: 'mm' | 'inch'): number {
  if (!lengths.includes(letter) || style.numbers.point !== 'implied') return Number(number);
  if (number.includes('.')) throw new Error(`A point in ${letter}${number}`);
  const { mmDecimals, inchDecimals } = letter === 'F' && style.feed ? style.feed : style.numbers;
  return Number(number) / 10 ** (unit === 'inch' ? inchDecimals : mmDecimals);
}

function wordsOf(codes: string[], values: Map<string, number>, style: ProgramStyle, state: State): string[] {
  const motion = codes.find((code) => /^G0[0-3]$/.test(code));
  if (codes.some((code) => code.startsWith('M'))) state.motion = '';
  if (!values.has('X') && !values.has('Y')) {
    // G94, feed by the minute, is what the neutral program means without saying it.
    return [
      ...codes.filter((code) => code !== 'G94'),
      ...[...values].map(([letter, value]) => `${letter}${value}`),
    ];
  }
  if (motion === undefined && state.motion === '') throw new Error('A move without its word');
  state.motion = motion ?? state.motion;
  const to = { x: values.get('X') ?? state.x, y: values.get('Y') ?? state.y };
  const radius = values.get('R');
  if (radius !== undefined) {
    const centre = centreOf({ x: to.x - state.x, y: to.y - state.y }, radius, state.motion === 'G03');
    values.set('I', centre.x);
    values.set('J', centre.y);
  }
  state.x = to.x;
  state.y = to.y;
  const others = codes.filter((code) => code !== motion);
  const said = ['X', 'Y', 'I', 'J', 'F'].flatMap((letter) => {
    const value = letter === 'X' ? to.x : letter === 'Y' ? to.y : values.get(letter);
    return value === undefined ? [] : [`${letter}${value.toFixed(9)}`];
  });
  const { letter, first } = style.offsets;
  const entry = values.get(letter);
  return [...others, state.motion, ...said, ...(entry === undefined ? [] : [`D${entry - first + 1}`])];
}

function centreOf(to: { x: number; y: number }, radius: number, counterClockwise: boolean) {
  const half = Math.hypot(to.x, to.y) / 2;
  const lift = Math.sqrt(Math.max(0, radius ** 2 - half ** 2)) / (2 * half);
  const side = counterClockwise ? 1 : -1;
  return { x: to.x / 2 - side * lift * to.y, y: to.y / 2 + side * lift * to.x };
}
