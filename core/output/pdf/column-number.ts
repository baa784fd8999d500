import { mmPerInch, type DisplayUnit } from '../../units';

/**
 * A length for a column of a table, with all its decimals so that the points stand under one another: mm with 4
 * (0.1 µm), inch with 5. 39.988 → "39.9880".
 */
export function columnNumber(mm: number, unit: DisplayUnit): string {
  const text = unit === 'inch' ? (mm / mmPerInch).toFixed(5) : mm.toFixed(4);
  return text.replace(/^-(0\.0+)$/, '$1');
}
