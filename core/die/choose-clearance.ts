import type { Finding } from '../finding';
import type { ClearanceChoice } from '../plan';
import { done, failed, type Result } from '../problem';
import { formatLength } from '../units';
import { stockMaterial, stockMaterials } from './stock-materials';

/** What the job asks for: the stock table, mm per side, or percent of the stock thickness per side. */
export type ClearanceRule =
  | { readonly rule: 'table' }
  | { readonly rule: 'typed'; readonly perSide: number }
  | { readonly rule: 'percent'; readonly percent: number };

export interface Stock {
  /** Id of a row of the stock table. */
  readonly material: string;
  /** mm. */
  readonly thickness: number;
}

export interface ChosenClearance {
  readonly choice: ClearanceChoice;
  /** The note for the review list where the clearance is outside the usual range; null inside it. */
  readonly unusual: Finding | null;
}

/** Usual clearance per side as a fraction of the stock thickness (Kalpakjian & Schmid, 6th ed. SI, figure 16.3). */
const usual = { from: 0.02, to: 0.1 } as const;

/**
 * Clearance per side by the job's rule, with the sentence that says where it comes from. An unknown material or a
 * number that is not greater than zero is a problem. Example: table, 3.2 mm half-hard cold-rolled steel → 0.24 mm.
 */
export function chooseClearance(rule: ClearanceRule, stock: Stock): Result<ChosenClearance> {
  if (!isPositive(stock.thickness)) {
    return failed(
      'stock-thickness',
      `The stock thickness must be a number greater than zero, not ${stock.thickness}`,
      'stock thickness',
      'Enter the thickness of the strip, for example 1 mm.',
    );
  }
  const chosen = byRule(rule, stock);
  if (!chosen.ok) return chosen;
  return done({ choice: chosen.value, unusual: unusualClearance(chosen.value.perSide, stock.thickness) });
}

function byRule(rule: ClearanceRule, stock: Stock): Result<ClearanceChoice> {
  switch (rule.rule) {
    case 'table':
      return fromTable(stock);
    case 'typed':
      if (!isPositive(rule.perSide))
        return badClearance(rule.perSide, 'Enter mm per side, for example 0.06.');
      return done({
        perSide: rule.perSide,
        reason: `typed, ${percentOf(rule.perSide, stock.thickness)} of the thickness`,
      });
    case 'percent': {
      if (!isPositive(rule.percent))
        return badClearance(rule.percent, 'Enter percent of the thickness, such as 6.');
      const perSide = (rule.percent / 100) * stock.thickness;
      return done({
        perSide,
        reason: `${shortNumber(rule.percent)} % of the thickness, typed`,
      });
    }
  }
}

function fromTable(stock: Stock): Result<ClearanceChoice> {
  const material = stockMaterial(stock.material);
  if (!material) {
    return failed(
      'stock-unknown',
      `The stock table has no material "${stock.material}"`,
      'stock material',
      `Choose one of ${stockMaterials.map((row) => row.id).join(', ')}, or type the clearance.`,
    );
  }
  const { value, source, status } = material.clearance;
  const trust = status === 'published' ? '' : `, ${status}`;
  return done({
    perSide: value * stock.thickness,
    reason: `${shortNumber(value)} × thickness for ${material.name} (${source}${trust})`,
  });
}

function badClearance(value: number, whatToDo: string) {
  return failed(
    'clearance-not-positive',
    `The clearance per side must be a number greater than zero, not ${value}`,
    'clearance',
    whatToDo,
  );
}

function unusualClearance(perSide: number, thickness: number): Finding | null {
  const fraction = perSide / thickness;
  if (fraction >= usual.from * (1 - roundingSlack) && fraction <= usual.to * (1 + roundingSlack)) return null;
  const tooSmall = fraction < usual.from;
  const effect = tooSmall
    ? 'expect more force, wear and a second sheared band'
    : 'expect a larger burr and a rounded edge';
  return {
    key: `clearance-unusual/${perSide.toPrecision(6)}/${thickness.toPrecision(6)}`,
    code: 'clearance-unusual',
    weight: 'note',
    title: tooSmall ? 'Clearance smaller than usual' : 'Clearance larger than usual',
    message:
      `${formatLength(perSide, 'mm')} (${formatLength(perSide, 'inch')}) per side is ${percentOf(perSide, thickness)} ` +
      `of the thickness; 2 to 10 % is usual (Kalpakjian & Schmid, figure 16.3): ${effect}.`,
    place: null,
    contourId: null,
    memberId: null,
    numbers: [
      { label: 'clearance per side', value: perSide, kind: 'length' },
      { label: 'stock thickness', value: thickness, kind: 'length' },
    ],
    cures: [
      {
        kind: 'other',
        say:
          `Take between ${formatLength(usual.from * thickness, 'mm')} and ` +
          `${formatLength(usual.to * thickness, 'mm')} per side.`,
      },
    ],
  };
}

/** A typed 2 % must not fall outside the range by the rounding of a division: four units in the last place. */
const roundingSlack = 4 * Number.EPSILON;

const isPositive = (value: number): boolean => Number.isFinite(value) && value > 0;

const percentOf = (part: number, whole: number): string => `${shortNumber((100 * part) / whole)} %`;

/** Up to four significant digits, no trailing zeros. */
const shortNumber = (value: number): string => String(Number(value.toPrecision(4)));
