import { z } from 'zod';
import { materialFamilies } from './edge-types';
import type { Sourced } from './sourced';
import type { StockMaterial } from './stock-materials';

/** A material that a user added; it stands in the job. */
export const ownMaterialSchema = z.strictObject({
  /** `own-1`, …: never one of the shipped table's. */
  id: z.string().regex(/^own-\d+$/),
  name: z.string().trim().min(1),
  family: z.enum(materialFamilies).nullable(),
  /** Clearance per side as a fraction of the thickness. */
  clearance: z.number().positive().max(1),
  /** MPa; null where it is not known. */
  shearStrength: z.number().positive().nullable(),
  tensileStrength: z.number().positive().nullable(),
  /** Where the numbers come from, in the user's words. */
  source: z.string(),
});

export type OwnMaterial = z.infer<typeof ownMaterialSchema>;

/** The user's material as a row of the stock table. */
export function asStockMaterial(own: OwnMaterial): StockMaterial {
  const source = own.source.trim() === '' ? 'no source given' : own.source.trim();
  const typed = (value: number): Sourced => ({ value, source, status: 'typed' });
  return {
    id: own.id,
    name: own.name,
    family: own.family,
    clearance: typed(own.clearance),
    shearStrength: own.shearStrength === null ? null : typed(own.shearStrength),
    tensileStrength: own.tensileStrength === null ? null : typed(own.tensileStrength),
  };
}

/** The id of the next own material. */
export function nextOwnId(own: readonly OwnMaterial[]): string {
  const used = own.map(({ id }) => Number(id.slice('own-'.length)));
  return `own-${Math.max(0, ...used) + 1}`;
}
