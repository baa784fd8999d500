/** How far a number of the table can be trusted: printed in the named book, recalled from it, or what shops use. */
export type SourceStatus = 'published' | 'from memory' | 'common practice';

export interface Sourced {
  readonly value: number;
  readonly source: string;
  readonly status: SourceStatus;
}

/** One row of the stock table. A starting value in every column: the responsible tool engineer settles them. */
export interface StockMaterial {
  /** Stands in job files: never rename one. */
  readonly id: string;
  /** As it reads after the thickness: "1.5 mm half-hard cold-rolled steel". */
  readonly name: string;
  /** Clearance per side as a fraction of the stock thickness. */
  readonly clearance: Sourced;
  /** MPa; null where no value is at hand that fits the whole row. */
  readonly shearStrength: Sourced | null;
}

const groover = (value: number): Sourced => ({
  value,
  source: 'Groover, Fundamentals of Modern Manufacturing, table 20.1',
  status: 'published',
});

const machinerysHandbook = (value: number): Sourced => ({
  value,
  source: "Machinery's Handbook",
  status: 'from memory',
});

const handbookShear = (value: number, of: string): Sourced => ({
  value,
  source: `common handbook value for ${of}`,
  status: 'common practice',
});

/**
 * Stock materials with their clearance per side and shear strength, each number with its source. A row has no shear
 * strength where the sources give none, or where the alloys and tempers it spans differ too much for one number.
 */
export const stockMaterials: readonly StockMaterial[] = [
  {
    id: 'cold-rolled-soft',
    name: 'soft cold-rolled steel',
    clearance: groover(0.06),
    shearStrength: handbookShear(276, 'low-carbon sheet'),
  },
  {
    id: 'cold-rolled-half-hard',
    name: 'half-hard cold-rolled steel',
    clearance: groover(0.075),
    shearStrength: {
      value: 310,
      source: 'Groover, Fundamentals of Modern Manufacturing, example 20.1',
      status: 'published',
    },
  },
  {
    id: 'steel-medium-rolled',
    name: 'medium-rolled steel',
    clearance: machinerysHandbook(1 / 16),
    shearStrength: null,
  },
  {
    id: 'steel-hard-rolled',
    name: 'hard-rolled steel',
    clearance: machinerysHandbook(1 / 14),
    shearStrength: null,
  },
  {
    id: 'stainless-soft',
    name: 'soft stainless steel',
    clearance: groover(0.06),
    shearStrength: handbookShear(520, '304 stainless, upper end of 480–520'),
  },
  {
    id: 'stainless-half-hard',
    name: 'half-hard stainless steel',
    clearance: groover(0.075),
    shearStrength: null,
  },
  {
    id: 'stainless-full-hard',
    name: 'full-hard stainless steel',
    clearance: groover(0.075),
    shearStrength: null,
  },
  {
    id: 'brass',
    name: 'brass',
    clearance: groover(0.06),
    shearStrength: handbookShear(276, 'half-hard brass 260'),
  },
  {
    id: 'copper-annealed',
    name: 'annealed copper',
    clearance: {
      value: 0.06,
      source: 'ASM Handbook vol. 14B, edge type 3, middle of 5–7 %',
      status: 'from memory',
    },
    shearStrength: handbookShear(152, 'annealed copper'),
  },
  {
    id: 'aluminium-1100-5052',
    name: 'aluminium 1100 or 5052',
    clearance: groover(0.045),
    shearStrength: null,
  },
  {
    id: 'aluminium-2024-6061',
    name: 'aluminium 2024 or 6061',
    clearance: groover(0.06),
    shearStrength: null,
  },
];

/** The row with this id; undefined where there is none. */
export function stockMaterial(id: string): StockMaterial | undefined {
  return stockMaterials.find((material) => material.id === id);
}
