import type { DrawingFormat } from '../../core/drawing/drawing';

export interface ColourLook {
  readonly name: string;
  /** As style sheets write it. */
  readonly css: string;
}

/** A colour of the drawing as a person knows it: in a DXF an index (1 red … 7 white), elsewhere 0xRRGGBB. */
export function colourLook(colour: number, format: DrawingFormat): ColourLook {
  const rgb = format === 'dxf' ? rgbOfIndex(colour) : colour;
  const css = `#${rgb.toString(16).padStart(6, '0')}`;
  if (format !== 'dxf') return { name: css, css };
  const name = names[colour];
  return { name: name ? `${colour} ${name}` : String(colour), css };
}

const names: Readonly<Record<number, string>> = {
  1: 'red',
  2: 'yellow',
  3: 'green',
  4: 'cyan',
  5: 'blue',
  6: 'magenta',
  7: 'white or black',
  8: 'dark grey',
  9: 'light grey',
};

const first = [0, 0xff0000, 0xffff00, 0x00ff00, 0x00ffff, 0x0000ff, 0xff00ff, 0xffffff, 0x808080, 0xc0c0c0];
const greys = [0x000000, 0x656565, 0x666666, 0x999999, 0xcccccc, 0xffffff];
const levels = [255, 165, 127, 76, 38];

/**
 * 0xRRGGBB of a colour index. From 10 on: 24 hues in steps of 15°, each in five levels, each of these full and half
 * tinted; the last six are greys (default palette of ezdxf).
 */
export function rgbOfIndex(index: number): number {
  const fixed = index < first.length ? first[index] : greys[index - 250];
  if (fixed !== undefined) return fixed;
  const hue = (Math.floor((index - 10) / 10) * 15) / 60;
  const most = levels[(index % 10) >> 1] ?? 255;
  const least = index % 2 === 0 ? 0 : Math.floor(most / 2);
  const channel = (shift: number): number => {
    // A trapezium round the circle of hues: full for two sixths, falling for one, none for two, rising for one.
    const at = (hue + shift) % 6;
    const part = Math.max(0, Math.min(1, 2 - Math.abs(at - 2)));
    return Math.floor(least + (most - least) * part);
  };
  return (channel(2) << 16) | (channel(0) << 8) | channel(4);
}
