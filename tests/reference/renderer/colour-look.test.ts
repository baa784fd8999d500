import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { colourLook, rgbOfIndex } from '../../../renderer/drawing/colour-look';
import { ezdxf, python } from '../../support/outside-tool';

const { missing } = ezdxf();

describe.skipIf(missing)('colours by index', () => {
  it('are those of the default palette of ezdxf, but for rounding and its own lighter dark blues', () => {
    const text = execFileSync(python, ['-c', script], { encoding: 'utf8' });
    const palette = JSON.parse(text) as readonly number[];
    expect(palette.length).toBeGreaterThanOrEqual(256);
    const off: number[] = [];
    for (let index = 1; index <= 255; index++) {
      const [ours, theirs] = [rgbOfIndex(index), palette[index] ?? 0];
      const apart = [16, 8, 0].map((shift) => Math.abs(((ours >> shift) & 255) - ((theirs >> shift) & 255)));
      // The darkest half tints stand out of the palette's own order there.
      const room = index > 100 && index < 250 && index % 10 >= 7 ? 64 : 1;
      if (Math.max(...apart) > room) off.push(index);
    }
    expect(off).toEqual([]);
  });
});

describe('colours by name', () => {
  it('of a DXF by index, of an SVG as written', () => {
    expect(colourLook(1, 'dxf')).toEqual({ name: '1 red', css: '#ff0000' });
    expect(colourLook(42, 'dxf').name).toBe('42');
    expect(colourLook(0x00ff80, 'svg')).toEqual({ name: '#00ff80', css: '#00ff80' });
  });
});

const script =
  'import json; from ezdxf.colors import DXF_DEFAULT_COLORS as c; print(json.dumps([int(x) for x in c]))';
