import { drawingUnits, type DrawingUnit } from '../units';
import type { DrawingRecords } from './drawing-records';
import { valueOf } from './group-values';
import { textAt, textOf, type Pairs } from './pairs';
import { blockKey, type ParsedDrawing, type ParsedEntity } from './parse-entities';
import type { Damage } from './raw-drawing';

/**
 * What to look at where a block states another unit than the drawing. Drawing programs write the conversion into the
 * scale of the INSERT (groups 41, 42) when they insert the block and convert nothing when they show it (ezdxf
 * documentation, "DXF Units", "Block Units"), so the drawing is read as it is shown; but where the scale does not hold
 * the conversion, the part may have been meant larger or smaller, and a person must say.
 */
export function blockUnitDamage(
  pairs: Pairs,
  records: DrawingRecords,
  parsed: ParsedDrawing,
  decode: (latin: string) => string,
  drawingUnit: DrawingUnit | null,
): Damage[] {
  if (drawingUnit === null) return [];
  const units = blockUnits(pairs, records, decode);
  const told = new Map<string, Damage>();
  const look = (entity: ParsedEntity, hostUnit: DrawingUnit): void => {
    if (entity.kind !== 'INSERT' || entity.inPaper) return;
    const unit = units.get(blockKey(entity.name));
    if (unit === undefined || unit === hostUnit) return;
    const factor = drawingUnits[unit].mm / drawingUnits[hostUnit].mm;
    const scale = Math.abs(valueOf(entity.groups, 41) ?? 1);
    // Within one in a thousand the scale is the conversion.
    if (Math.abs(scale / factor - 1) < 0.001) return;
    const say =
      `Block "${entity.name}" states ${unit} and is inserted into a drawing in ${hostUnit} at scale ${scale}, ` +
      `where ${Number(factor.toPrecision(8))} would keep its size. It is read as drawing programs show it, at scale ${scale}; check its size.`;
    told.set(blockKey(entity.name), { weight: 'decide', say });
  };
  for (const entity of parsed.entities) look(entity, drawingUnit);
  for (const [key, block] of parsed.blocks)
    if (!key.startsWith('*'))
      for (const entity of block.entities) look(entity, units.get(key) ?? drawingUnit);
  return [...told.values()];
}

/** Units of blocks by key: group 70 of BLOCK_RECORD, before R2007 the second 1070 of its "DesignCenter Data". */
function blockUnits(
  pairs: Pairs,
  records: DrawingRecords,
  decode: (latin: string) => string,
): ReadonlyMap<string, DrawingUnit> {
  const byCode = new Map(
    (Object.keys(drawingUnits) as DrawingUnit[]).map((unit) => [drawingUnits[unit].code as number, unit]),
  );
  const units = new Map<string, DrawingUnit>();
  for (const { from, to } of records.blockRecords) {
    const name = decode(textOf(pairs, 2, from, to));
    const stated = Number(textOf(pairs, 70, from, to)) || designCentreUnit(pairs, from, to);
    const unit = byCode.get(stated);
    if (unit) units.set(blockKey(name), unit);
  }
  return units;
}

function designCentreUnit(pairs: Pairs, from: number, to: number): number {
  let isData = false;
  const numbers: number[] = [];
  for (let i = from; i < to; i++) {
    if (pairs.codes[i] === 1000) isData = textAt(pairs, i) === 'DesignCenter Data';
    else if (isData && pairs.codes[i] === 1070) numbers.push(Number(textAt(pairs, i)));
  }
  return numbers[1] ?? 0;
}
