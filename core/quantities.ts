import { done, failed, type Result } from './problem';
import type { DisplayUnit } from './units';
import * as portable from './geometry/portable-math';

/** What tables and die sets hold besides lengths. */
export type Quantity = 'rate' | 'roughness' | 'wire speed' | 'feed' | 'force' | 'stress' | 'spring rate';

interface QuantityUnit {
  /** As it is written. */
  readonly name: string;
  /** Size in the unit of the job file. */
  readonly size: number;
  readonly alsoTyped: readonly string[];
}

/** 25.4 mm, 304.8 mm and 4.4482216152605 N, exactly (NIST SP 811, appendix B). */
const inch = 25.4;
const foot = 304.8;
const poundForce = 4.448_221_615_260_5;

/** Units of the shop, the job file's first (size 1). */
const units: Readonly<Record<Quantity, Readonly<Record<DisplayUnit, QuantityUnit>>>> = {
  rate: {
    mm: { name: 'mm²/min', size: 1, alsoTyped: ['mm2/min'] },
    inch: { name: 'in²/h', size: (inch * inch) / 60, alsoTyped: ['in2/h', 'sq in/h'] },
  },
  roughness: {
    mm: { name: 'µm', size: 1, alsoTyped: ['μm', 'um'] },
    inch: { name: 'µin', size: inch / 1000, alsoTyped: ['μin', 'uin'] },
  },
  'wire speed': {
    mm: { name: 'm/min', size: 1, alsoTyped: [] },
    inch: { name: 'ft/min', size: foot / 1000, alsoTyped: ["'/min"] },
  },
  feed: {
    mm: { name: 'mm/min', size: 1, alsoTyped: [] },
    inch: { name: 'in/min', size: inch, alsoTyped: ['ipm', '"/min'] },
  },
  // N, MPa and N/mm in the job file.
  force: {
    mm: { name: 'kN', size: 1000, alsoTyped: ['kn'] },
    inch: { name: 'short tons', size: 2000 * poundForce, alsoTyped: ['tons', 'ton', 'short ton'] },
  },
  stress: {
    mm: { name: 'MPa', size: 1, alsoTyped: ['mpa', 'n/mm²', 'n/mm2'] },
    inch: { name: 'ksi', size: (1000 * poundForce) / inch ** 2, alsoTyped: [] },
  },
  'spring rate': {
    mm: { name: 'N/mm', size: 1, alsoTyped: ['n/mm'] },
    inch: { name: 'lbf/in', size: poundForce / inch, alsoTyped: ['lb/in'] },
  },
};

/** What was typed in the unit of the job file; a bare number is in the unit on display. More than zero. */
export function parseQuantity(text: string, quantity: Quantity, display: DisplayUnit): Result<number> {
  const known = Object.values(units[quantity]);
  const [, number, typed = ''] = /^([\d.,]+)\s*(.*)$/.exec(text.trim()) ?? [];
  const unit =
    typed === ''
      ? units[quantity][display]
      : known.find(({ name, alsoTyped }) => [name.toLowerCase(), ...alsoTyped].includes(typed.toLowerCase()));
  const value =
    number !== undefined && /^(\d+[.,]?\d*|[.,]\d+)$/.test(number) ? Number(number.replace(',', '.')) : NaN;
  if (unit && value > 0 && Number.isFinite(value)) return done(value * unit.size);
  return failed(
    'quantity-not-read',
    `"${text.trim()}" is no ${quantity}`,
    '',
    `Type a number more than zero, in ${known.map(({ name }) => name).join(' or ')}.`,
  );
}

/** To four figures, with its unit: "100 mm²/min", "9.3 in²/h". */
export const formatQuantity = (value: number, quantity: Quantity, display: DisplayUnit): string =>
  `${formatQuantityNumber(value, quantity, display)} ${quantityUnit(quantity, display)}`;

/** The same without the unit. */
export const formatQuantityNumber = (value: number, quantity: Quantity, display: DisplayUnit): string =>
  String(Number((value / units[quantity][display].size).toPrecision(4)));

export const quantityUnit = (quantity: Quantity, display: DisplayUnit): string =>
  units[quantity][display].name;

/** One step of the second figure on display: 100 → 110, 1.6 → 1.7; never to zero. */
export function steppedQuantity(
  value: number,
  direction: 1 | -1,
  quantity: Quantity,
  display: DisplayUnit,
): number {
  const { size } = units[quantity][display];
  const shown = value / size;
  const step = portable.powerOfTen(portable.decadeOf(shown) - 1);
  const next = (Math.round(shown / step) + direction) * step;
  return Number((next > 0 ? next : shown).toPrecision(10)) * size;
}
