import * as portable from '../geometry/portable-math';

export interface DimensionText {
  /** The number written in place of the measured one; null where the measured one stands or none is written. */
  readonly number: number | null;
  /** What one step of its last digit is worth; 0 without a number. */
  readonly lastPlace: number;
  /** `⌀` or `R` before the number; empty without. */
  readonly sign: '⌀' | 'R' | '';
  /** Deviations written beside it, minus with its sign. */
  readonly deviation: { readonly plus: number; readonly minus: number } | null;
}

/**
 * What the text of a dimension says (formatting already taken out): `<>` or nothing stands for the measured number;
 * "4x ⌀6.5", "R2,5 TYP" and "25.4±0.05", "25 +0.1/-0.2", "12 +0.02 0" are read. Fits such as H7 are left as text.
 * Fractions and feet are not read as a number.
 */
export function readDimensionText(text: string): DimensionText {
  const rest = text.replace(/^\s*\(?\s*\d+\s*[x×]\s*/i, '').trim();
  const deviation = deviationIn(rest);
  const plain = rest.replace(/[±].*$/, '').replace(/\s*[+-]\s*[\d.,]+.*$/, '');
  const found = /^\(?\s*([⌀ØøRr]?)\s*(\d+(?:[.,]\d+)?|[.,]\d+)(?![\d/']|\.\d)/.exec(plain);
  const isOther = /\d\s*\/\s*\d|['′]|\d\s*[°˚]/.test(plain);
  if (!found || isOther || rest.includes('<>')) return { number: null, lastPlace: 0, sign: '', deviation };
  const digits = (found[2] ?? '').replace(',', '.');
  const decimals = digits.includes('.') ? digits.length - digits.indexOf('.') - 1 : 0;
  const sign = found[1] === '' ? '' : /r/i.test(found[1] ?? '') ? 'R' : '⌀';
  return { number: Number(digits), lastPlace: portable.powerOfTen(-decimals), sign, deviation };
}

function deviationIn(text: string): DimensionText['deviation'] {
  const even = /±\s*(\d*[.,]?\d+)/.exec(text);
  if (even) {
    const size = numberOf(even[1]);
    return { plus: size, minus: -size };
  }
  const both = /([+-])\s*(\d*[.,]?\d+)\s*[/ ]\s*([+-]?)\s*(\d*[.,]?\d+)\s*$/.exec(text);
  if (!both) return null;
  const first = numberOf(both[2]) * (both[1] === '-' ? -1 : 1);
  const second = numberOf(both[4]) * (both[3] === '-' ? -1 : 1);
  return { plus: Math.max(first, second), minus: Math.min(first, second) };
}

const numberOf = (digits = ''): number => Number(digits.replace(',', '.'));
