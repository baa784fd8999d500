import { findingOf } from '../finding-of';
import type { Finding } from '../finding';
import type { ClearanceChoice } from '../plan';
import { done, failed, type Result } from '../problem';
import { sayLength, shortNumber } from '../say';
import { edgeEffect, edgeTypeFraction, edgeTypeSource, type EdgeType } from './edge-types';
import { saySource } from './sourced';
import { jumpsAtThree, squareRootClearance, squareRootSource } from './square-root-clearance';
import { stockMaterial, stockMaterials, type StockMaterial } from './stock-materials';

/**
 * What the job asks for: the stock table, a wanted edge, the square-root formula, mm per side, or percent of the stock
 * thickness per side.
 */
export type ClearanceRule =
  | { readonly rule: 'table' }
  | { readonly rule: 'edge type'; readonly type: EdgeType }
  | { readonly rule: 'square root'; readonly factor: number }
  | { readonly rule: 'typed'; readonly perSide: number }
  | { readonly rule: 'percent'; readonly percent: number };

export interface Stock {
  /** Id of a row of the stock table or of an own material. */
  readonly material: string;
  /** mm. */
  readonly thickness: number;
}

export interface ChosenClearance {
  readonly choice: ClearanceChoice;
  /** Notes for the review list: outside the usual range, or a formula at its limits. */
  readonly notes: readonly Finding[];
}

/** Usual clearance per side as a fraction of the stock thickness (Kalpakjian & Schmid, 6th ed. SI, figure 16.3). */
const usual = { from: 0.02, to: 0.1 } as const;

/**
 * Clearance per side by the job's rule, with the sentences that say where it comes from and what it does to the edge.
 * An unknown material, a rule that the material has no number for, or a number that is not greater than zero is a
 * problem. Example: table, 3.2 mm half-hard cold-rolled steel → 0.24 mm.
 */
export function chooseClearance(
  rule: ClearanceRule,
  stock: Stock,
  own: readonly StockMaterial[] = [],
): Result<ChosenClearance> {
  if (!isPositive(stock.thickness)) {
    return failed(
      'stock-thickness',
      `The stock thickness must be a number greater than zero, not ${stock.thickness}`,
      'stock thickness',
      'Enter the thickness of the strip, for example 1 mm.',
    );
  }
  const material = stockMaterial(stock.material, own);
  const chosen = byRule(rule, stock, material);
  if (!chosen.ok) return chosen;
  const { perSide, reason } = chosen.value;
  const effect = edgeEffect(material?.family ?? null, perSide / stock.thickness);
  return done({ choice: { perSide, reason, effect }, notes: notesOn(rule, perSide, stock, effect) });
}

type Reasoned = Pick<ClearanceChoice, 'perSide' | 'reason'>;

function byRule(rule: ClearanceRule, stock: Stock, material: StockMaterial | undefined): Result<Reasoned> {
  const { thickness } = stock;
  switch (rule.rule) {
    case 'table':
      return material ? fromTable(thickness, material) : unknownMaterial(stock.material);
    case 'edge type':
      return material ? forEdge(rule.type, thickness, material) : unknownMaterial(stock.material);
    case 'square root':
      return material ? byRoot(rule.factor, thickness, material) : unknownMaterial(stock.material);
    case 'typed':
      if (!isPositive(rule.perSide)) {
        return badClearance(rule.perSide, 'Enter mm per side, for example 0.06.');
      }
      return done({
        perSide: rule.perSide,
        reason: `typed, ${percentOf(rule.perSide, thickness)} of the thickness`,
      });
    case 'percent':
      if (!isPositive(rule.percent)) {
        return badClearance(rule.percent, 'Enter percent of the thickness, such as 6.');
      }
      return done({
        perSide: (rule.percent / 100) * thickness,
        reason: `${shortNumber(rule.percent)} % of the thickness, typed`,
      });
  }
}

function fromTable(thickness: number, { clearance, name }: StockMaterial): Result<Reasoned> {
  return done({
    perSide: clearance.value * thickness,
    reason: `${shortNumber(clearance.value)} × thickness for ${name} (${saySource(clearance)})`,
  });
}

function forEdge(type: EdgeType, thickness: number, { family, name }: StockMaterial): Result<Reasoned> {
  const fraction = edgeTypeFraction(family, type);
  if (fraction === null) {
    return failed(
      'edge-type-none',
      `The table of edge types has no row for ${name}`,
      'clearance',
      'Take the clearance from the stock table, or type it.',
    );
  }
  return done({
    perSide: fraction * thickness,
    reason: `${shortNumber(fraction)} × thickness for edge type ${type} in ${family ?? name} (${edgeTypeSource})`,
  });
}

function byRoot(factor: number, thickness: number, material: StockMaterial): Result<Reasoned> {
  const { shearStrength, name } = material;
  if (!shearStrength) {
    return failed(
      'shear-strength-none',
      `The stock table has no shear strength for ${name}, which the square-root formula needs`,
      'clearance',
      'Take the clearance from the stock table, or add the material with its shear strength.',
    );
  }
  const perSide = squareRootClearance(thickness, shearStrength.value, factor);
  if (!isPositive(perSide)) {
    return badClearance(perSide, 'The factor is too small for stock this thick: 0.01 is usual.');
  }
  const form = thickness > 3 ? '(1.5 c t − 0.015) √(τ/10)' : 'c t √(τ/10)';
  return done({
    perSide,
    reason:
      `${form} with c ${shortNumber(factor)}, τ ${shortNumber(shearStrength.value)} MPa ` +
      `(${squareRootSource}; τ: ${saySource(shearStrength)})`,
  });
}

function unknownMaterial(id: string) {
  return failed(
    'stock-unknown',
    `The stock table has no material "${id}"`,
    'stock material',
    `Choose one of ${stockMaterials.map((row) => row.id).join(', ')}, or type the clearance.`,
  );
}

function badClearance(value: number, whatToDo: string) {
  return failed(
    'clearance-not-positive',
    `The clearance per side must be a number greater than zero, not ${value}`,
    'clearance',
    whatToDo,
  );
}

function notesOn(rule: ClearanceRule, perSide: number, stock: Stock, effect: string): readonly Finding[] {
  const numbers = [
    { label: 'clearance per side', value: perSide, kind: 'length' },
    { label: 'stock thickness', value: stock.thickness, kind: 'length' },
  ] as const;
  const fraction = perSide / stock.thickness;
  const isUsual = fraction >= usual.from * (1 - roundingSlack) && fraction <= usual.to * (1 + roundingSlack);
  const jumps = rule.rule === 'square root' && jumpsAtThree(stock.thickness, rule.factor);
  return [
    ...(isUsual ? [] : [unusualClearance(perSide, stock.thickness, effect, numbers)]),
    ...(jumps
      ? [
          findingOf({
            code: 'clearance-formula-jumps',
            weight: 'note',
            title: 'The square-root formula jumps at 3 mm',
            message:
              `Its two ranges meet at 3 mm only for the factor 0.01 (${squareRootSource}): compare ` +
              `${sayLength(perSide)} with the stock table.`,
            numbers,
          }),
        ]
      : []),
  ];
}

function unusualClearance(
  perSide: number,
  thickness: number,
  effect: string,
  numbers: Finding['numbers'],
): Finding {
  return findingOf({
    code: 'clearance-unusual',
    weight: perSide / thickness > widest ? 'decide' : 'note',
    title: perSide / thickness < usual.from ? 'Clearance smaller than usual' : 'Clearance larger than usual',
    message:
      `${sayLength(perSide)} per side is ${percentOf(perSide, thickness)} of the thickness; ` +
      `2 to 10 % is usual (Kalpakjian & Schmid, figure 16.3). ${effect}`,
    numbers,
    cures: [
      {
        kind: 'other',
        say: `Take between ${sayLength(usual.from * thickness)} and ${sayLength(usual.to * thickness)} per side.`,
      },
    ],
  });
}

/** Wider than the widest clearance of any edge type (common practice): more likely a slip than a choice. */
const widest = 0.25;

/** A typed 2 % must not fall outside the range by the rounding of a division: four units in the last place. */
const roundingSlack = 4 * Number.EPSILON;

const isPositive = (value: number): boolean => Number.isFinite(value) && value > 0;

const percentOf = (part: number, whole: number): string => `${shortNumber((100 * part) / whole)} %`;
