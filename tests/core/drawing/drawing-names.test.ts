import { describe, expect, it } from 'vitest';
import { block, circle, dxf, outline, square, type Groups } from './drawn';

const mm: Groups = [9, '$INSUNITS', 70, 4];
const layerRead = (layer: string, header: Groups): string | undefined =>
  outline(dxf({ header: [...mm, ...header], entities: square(0, 0, 10, layer) })).contours[0]?.layer;

describe('names in a drawing', () => {
  // Bytes of the same words by the WHATWG Encoding standard's tables; one character here is one byte of the file.
  it.each([
    ['Windows-1252', 'Au\u00dfen', [9, '$DWGCODEPAGE', 3, 'ANSI_1252'], 'Außen'],
    ['no code page', 'Au\u00dfen', [], 'Außen'],
    [
      'Windows-1251',
      '\u00c2\u00e8\u00e4',
      [9, '$ACADVER', 1, 'AC1015', 9, '$DWGCODEPAGE', 3, 'ansi_1251'],
      'Вид',
    ],
    ['Shift JIS', '\u008aO', [9, '$DWGCODEPAGE', 3, 'ANSI_932'], '外'],
    [
      'UTF-8 from AC1021',
      '\u00e5\u00a4\u0096',
      [9, '$ACADVER', 1, 'AC1021', 9, '$DWGCODEPAGE', 3, 'ANSI_1252'],
      '外',
    ],
    ['\\U+XXXX', '\\U+5916', [], '外'],
    ['a line end by number', 'A\\U+000AB', [], 'A B'],
  ])('%s', (_, bytesOfName, header, name) => {
    expect(layerRead(bytesOfName, header)).toBe(name);
  });

  it('like __proto__ and constructor are names like any other', () => {
    const insert = (name: string): Groups => [0, 'INSERT', 8, '0', 2, name, 10, 0, 20, 0];
    const drawing = outline(
      dxf({
        blocks: [...block('__proto__', circle(5, 5, 1)), ...block('constructor', circle(8, 8, 1))],
        entities: [
          ...square(0, 0, 10, '__proto__'),
          ...insert('__proto__'),
          ...insert('CONSTRUCTOR'),
          ...[0, 'constructor', 8, 'X', 0, '__proto__', 8, 'X', 0, 'toString', 8, 'X'],
        ],
      }),
    );
    expect(drawing.contours).toHaveLength(3);
    expect(drawing.contours[0]?.layer).toBe('__proto__');
    expect(drawing.unused.map(({ kind }) => kind)).toEqual(['__proto__', 'constructor', 'toString']);
  });
});
