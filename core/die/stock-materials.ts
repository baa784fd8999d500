import type { MaterialFamily } from './edge-types';
import { commonPractice, fromMemory, published, type Sourced } from './sourced';

/** One row of the stock table. A starting value in every column: the responsible tool engineer settles them. */
export interface StockMaterial {
  /** Stands in job files: never rename one. */
  readonly id: string;
  /** As it reads after the thickness: "1.5 mm half-hard cold-rolled steel". */
  readonly name: string;
  /** What the rules that go by kind of metal take it for; null where they say nothing of it. */
  readonly family: MaterialFamily | null;
  /** Clearance per side as a fraction of the stock thickness. */
  readonly clearance: Sourced;
  /** MPa; null where no value is at hand that fits the whole row. */
  readonly shearStrength: Sourced | null;
  /** Ultimate tensile strength, MPa, the upper end of a range; null as above. */
  readonly tensileStrength: Sourced | null;
}

const groover = (value: number) =>
  published(value, 'Groover, Fundamentals of Modern Manufacturing, table 20.1');
const machinerysHandbook = (value: number) => fromMemory(value, "Machinery's Handbook");
const edgeTypeMiddle = (value: number, of: string) =>
  fromMemory(value, `ASM Handbook vol. 14B, edge type 3, middle of ${of} %`);
const handbookShear = (value: number, of: string) => commonPractice(value, `common handbook value for ${of}`);
const stripStandard = (value: number, of: string) => published(value, `EN 10139:1998, DC01 ${of}`);

/**
 * Stock materials with clearance per side and strengths, each number with its source. A row has no strength where the
 * sources give none, or where the alloys and tempers it spans differ too much for one number.
 */
export const stockMaterials: readonly StockMaterial[] = [
  {
    id: 'cold-rolled-soft',
    name: 'soft cold-rolled steel',
    family: 'low-carbon steel',
    clearance: groover(0.06),
    shearStrength: handbookShear(276, 'low-carbon sheet'),
    tensileStrength: stripStandard(410, 'LC, 270 to 410'),
  },
  {
    id: 'cold-rolled-half-hard',
    name: 'half-hard cold-rolled steel',
    family: 'low-carbon steel',
    clearance: groover(0.075),
    shearStrength: published(310, 'Groover, Fundamentals of Modern Manufacturing, example 20.1'),
    tensileStrength: stripStandard(540, 'C390, 390 to 540'),
  },
  {
    id: 'hot-rolled',
    name: 'hot-rolled low-carbon steel',
    family: 'low-carbon steel',
    clearance: machinerysHandbook(1 / 20),
    shearStrength: handbookShear(345, 'hot-rolled low-carbon steel'),
    tensileStrength: null,
  },
  {
    id: 'steel-medium-rolled',
    name: 'medium-rolled steel',
    family: 'low-carbon steel',
    clearance: machinerysHandbook(1 / 16),
    shearStrength: null,
    tensileStrength: null,
  },
  {
    id: 'steel-hard-rolled',
    name: 'hard-rolled steel',
    family: 'low-carbon steel',
    clearance: machinerysHandbook(1 / 14),
    shearStrength: null,
    tensileStrength: stripStandard(740, 'C590, 590 to 740'),
  },
  {
    id: 'spring-steel-hard',
    name: 'hardened spring steel',
    family: 'high-carbon steel',
    clearance: edgeTypeMiddle(0.15, '14 to 16'),
    shearStrength: handbookShear(1380, 'spring steel hardened to spring temper'),
    tensileStrength: null,
  },
  {
    id: 'electrical-steel',
    name: 'annealed electrical steel',
    family: 'low-carbon steel',
    clearance: commonPractice(0.05, 'common practice'),
    shearStrength: handbookShear(190, 'annealed electrical steel'),
    tensileStrength: null,
  },
  {
    id: 'stainless-soft',
    name: 'soft stainless steel',
    family: 'stainless steel',
    clearance: groover(0.06),
    shearStrength: handbookShear(520, '304 stainless, upper end of 480 to 520'),
    tensileStrength: fromMemory(750, 'EN 10088-2, 1.4301 strip, 540 to 750'),
  },
  {
    id: 'stainless-half-hard',
    name: 'half-hard stainless steel',
    family: 'stainless steel',
    clearance: groover(0.075),
    shearStrength: null,
    tensileStrength: fromMemory(1035, 'ASTM A666, 301 half hard, least value'),
  },
  {
    id: 'stainless-full-hard',
    name: 'full-hard stainless steel',
    family: 'stainless steel',
    clearance: groover(0.075),
    shearStrength: null,
    tensileStrength: fromMemory(1275, 'ASTM A666, 301 full hard, least value'),
  },
  {
    id: 'brass-annealed',
    name: 'annealed brass',
    family: 'brass',
    clearance: groover(0.06),
    shearStrength: handbookShear(234, 'annealed brass 260'),
    tensileStrength: fromMemory(370, 'EN 1652, CuZn37 R300, 300 to 370'),
  },
  {
    id: 'brass',
    name: 'brass',
    family: 'brass',
    clearance: groover(0.06),
    shearStrength: handbookShear(276, 'half-hard brass 260'),
    tensileStrength: fromMemory(440, 'EN 1652, CuZn37 R350, 350 to 440'),
  },
  {
    id: 'copper-annealed',
    name: 'annealed copper',
    family: 'copper',
    clearance: edgeTypeMiddle(0.06, '5 to 7'),
    shearStrength: handbookShear(152, 'annealed copper'),
    tensileStrength: published(260, 'EN 1652:1997, Cu-DHP R220, 220 to 260'),
  },
  {
    id: 'aluminium-1100-5052',
    name: 'aluminium 1100 or 5052',
    family: 'aluminium',
    clearance: groover(0.045),
    shearStrength: null,
    tensileStrength: null,
  },
  {
    id: 'aluminium-1100-o',
    name: 'aluminium 1100-O',
    family: 'aluminium',
    clearance: groover(0.045),
    shearStrength: handbookShear(62, 'aluminium 1100-O'),
    tensileStrength: null,
  },
  {
    id: 'aluminium-1100-h14',
    name: 'aluminium 1100-H14',
    family: 'aluminium',
    clearance: groover(0.045),
    shearStrength: handbookShear(76, 'aluminium 1100-H14'),
    tensileStrength: null,
  },
  {
    id: 'aluminium-2024-6061',
    name: 'aluminium 2024 or 6061',
    family: 'aluminium',
    clearance: groover(0.06),
    shearStrength: null,
    tensileStrength: null,
  },
  {
    id: 'aluminium-6061-o',
    name: 'aluminium 6061-O',
    family: 'aluminium',
    clearance: groover(0.06),
    shearStrength: handbookShear(83, 'aluminium 6061-O'),
    tensileStrength: null,
  },
  {
    id: 'aluminium-6061-t6',
    name: 'aluminium 6061-T6',
    family: 'aluminium',
    clearance: groover(0.06),
    shearStrength: handbookShear(207, 'aluminium 6061-T6'),
    tensileStrength: null,
  },
];

/** The row with this id, the job's own materials first; undefined where there is none. */
export function stockMaterial(id: string, own: readonly StockMaterial[] = []): StockMaterial | undefined {
  return [...own, ...stockMaterials].find((material) => material.id === id);
}
