import { deflateSync } from 'node:zlib';

/**
 * The program's icon: the outline of a die opening and, inside it, the punch with its clearance, a square with
 * rounded corners and one corner bitten out. Colours from the palette of Okabe and Ito (2008).
 */
const size = 100;
const half = 34;
const corner = 12;
const bite = 24;

/** Outlines by how far they lie inside the opening: the lines of the die and the punch, outer and inner edge. */
const strokes = [
  { from: -4, to: 4, colour: [0x00, 0x72, 0xb2] },
  { from: 8, to: 14, colour: [0xd5, 0x5e, 0x00] },
] as const;

const ground = { inset: 2, corner: 20, colour: [0xff, 0xff, 0xff] } as const;

export function iconSvg(): string {
  const lines = strokes.map(({ from, to, colour }) => {
    const path = `${outlinePath(from)}${outlinePath(to)}`;
    return `  <path fill="${hex(colour)}" fill-rule="evenodd" d="${path}"/>`;
  });
  const side = size - 2 * ground.inset;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}">`,
    `  <rect x="${ground.inset}" y="${ground.inset}" width="${side}" height="${side}" rx="${ground.corner}" fill="${hex(ground.colour)}"/>`,
    ...lines,
    '</svg>',
    '',
  ].join('\n');
}

/** The same as a square PNG, each pixel the mean of 4 × 4 samples. */
export function iconPng(pixels: number): Buffer {
  const rows = Buffer.alloc(pixels * (pixels * 4 + 1));
  for (let row = 0; row < pixels; row += 1) {
    for (let column = 0; column < pixels; column += 1) {
      rows.set(pixel(column, row, size / pixels), row * (pixels * 4 + 1) + 1 + column * 4);
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(pixels, 0);
  header.writeUInt32BE(pixels, 4);
  // 8 bits a channel, red green blue alpha (PNG specification, 11.2.1).
  header.set([8, 6, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function outlinePath(inset: number): string {
  const [h, r, b] = [half - inset, corner - inset, bite + inset];
  const c = size / 2;
  const reach = Math.sqrt(b * b - inset * inset);
  const at = (x: number, y: number) => `${(c + x).toFixed(3)} ${(c + y).toFixed(3)}`;
  const round = Math.max(r, 0);
  const turn = `A${round} ${round} 0 0 1 `;
  // Clockwise on the screen from the bitten corner's right end; the bite turns the other way.
  return [
    `M${at(h, -half + reach)}L${at(h, h - round)}${turn}${at(h - round, h)}`,
    `L${at(-h + round, h)}${turn}${at(-h, h - round)}L${at(-h, -h + round)}${turn}${at(-h + round, -h)}`,
    `L${at(half - reach, -h)}A${b} ${b} 0 0 0 ${at(h, -half + reach)}Z`,
  ].join('');
}

function isInside(x: number, y: number, inset: number): boolean {
  const bitten = Math.hypot(x - half, y + half) < bite + inset;
  return !bitten && isInsideRounded(x, y, half - inset, Math.max(corner - inset, 0));
}

function isInsideRounded(x: number, y: number, h: number, r: number): boolean {
  const dx = Math.max(Math.abs(x) - (h - r), 0);
  const dy = Math.max(Math.abs(y) - (h - r), 0);
  return Math.abs(x) <= h && Math.abs(y) <= h && Math.hypot(dx, dy) <= r;
}

function colourAt(x: number, y: number): readonly [number, number, number] | null {
  for (const { from, to, colour } of strokes) {
    if (isInside(x, y, from) && !isInside(x, y, to)) return colour;
  }
  return isInsideRounded(x, y, size / 2 - ground.inset, ground.corner) ? ground.colour : null;
}

function pixel(column: number, row: number, step: number): [number, number, number, number] {
  const sum = [0, 0, 0];
  let covered = 0;
  for (let sample = 0; sample < 16; sample += 1) {
    const x = (column + ((sample % 4) + 0.5) / 4) * step - size / 2;
    const y = (row + (Math.floor(sample / 4) + 0.5) / 4) * step - size / 2;
    const colour = colourAt(x, y);
    if (!colour) continue;
    covered += 1;
    colour.forEach((value, channel) => (sum[channel] = (sum[channel] ?? 0) + value));
  }
  const mean = (channel: number) => (covered === 0 ? 0 : Math.round((sum[channel] ?? 0) / covered));
  return [mean(0), mean(1), mean(2), Math.round((covered / 16) * 255)];
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const framed = Buffer.alloc(body.length + 8);
  framed.writeUInt32BE(data.length, 0);
  framed.set(body, 4);
  framed.writeUInt32BE(crc32(body), body.length + 4);
  return framed;
}

/** CRC-32 of the PNG specification, annex D. */
function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
  }
  return (crc ^ 0xffffffff) >>> 0;
}

const hex = (colour: readonly number[]): string =>
  `#${colour.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
