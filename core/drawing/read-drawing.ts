import { done, failed, type Result } from '../problem';
import { drawingUnits, type DrawingUnit } from '../units';
import { badNumber } from './check-numbers';
import type { DrawingSize } from './drawing';
import { drawingRecords, type DrawingRecords } from './drawing-records';
import { decodeName, drawingText } from './drawing-text';
import { flattenDrawing } from './flatten-drawing';
import { valueOf } from './group-values';
import { layerTable } from './layer-table';
import { mendedText } from './mended-text';
import { parseEntities, type ParsedDrawing } from './parse-entities';
import { piecesBox } from './piece-box';
import { incomplete, pieceShape } from './piece-shape';
import type { Damage, RawDrawing } from './raw-drawing';
import { readPairs, type MissingEnd, type Pairs } from './read-pairs';
import { unmoved } from './transform';

/**
 * Reads an ASCII DXF, R12 to 2018: bytes → checked group pairs → a mended file → dxf-parser → flat curves in drawing
 * units. Damage that loses nothing is mended and told; damage that may change the part is a problem with its line.
 */
export function readDrawing(bytes: Uint8Array): Result<RawDrawing> {
  const text = drawingText(bytes);
  if (!text.ok) return text;
  const read = readPairs(text.value);
  if (!read.ok) return read;
  const pairs = read.value;
  const records = drawingRecords(pairs);
  const cut = brokenOff(pairs, records);
  if (cut) return cut;
  if (!records.sections.includes('ENTITIES')) {
    return failed(
      'drawing-not-dxf',
      records.sections.length === 0
        ? 'The file is not a DXF drawing: it has no sections'
        : 'The DXF has no ENTITIES section',
      '',
      'Choose a DXF drawing, or have it exported again.',
    );
  }
  const bad = badNumber(pairs, records);
  if (bad) return { ok: false, problem: bad };
  const header = (name: string): string => (pairs.values[records.header.get(name) ?? -1] ?? '').trim();
  const decode = (latin: string): string => decodeName(latin, header('$ACADVER'), header('$DWGCODEPAGE'));
  const parsed = parseEntities(mendedText(pairs, records, decode));
  const damage = [
    ...pairs.damage,
    ...records.damage,
    ...missingEndDamage(pairs, records),
    ...lostVertices(parsed),
  ];
  if (records.openAtEnd === 'ENTITIES' && !isLastWhole(parsed))
    return cutOff(pairs.missingEnd, 'in the middle of an entity');
  const flat = flattenDrawing(parsed, layerTable(pairs, records, decode));
  if (!flat.ok) return flat;
  const { pieces, unused } = flat.value;
  const statedUnit = unitOfCode(header('$INSUNITS'));
  return done({ statedUnit, pieces, unused: unused.list(), damage, box: piecesBox(pieces) });
}

export { outlineOf } from './outline-of';

/** What a person needs to tell mm from inch: the stated unit and the extent in drawing units (0 × 0 without curves). */
export function drawingSize(raw: RawDrawing): DrawingSize {
  const { minX, minY, maxX, maxY } = raw.box;
  return { statedUnit: raw.statedUnit, width: Math.max(0, maxX - minX), height: Math.max(0, maxY - minY) };
}

/** The unit of an `$INSUNITS` code; null for 0 (none), no code, and units that no part is drawn in (light years). */
export function unitOfCode(code: string): DrawingUnit | null {
  if (!/^\d{1,3}$/.test(code)) return null;
  const units = Object.keys(drawingUnits) as DrawingUnit[];
  return units.find((unit) => drawingUnits[unit].code === Number(code)) ?? null;
}

function brokenOff(pairs: Pairs, records: DrawingRecords) {
  const { missingEnd } = pairs;
  if (!missingEnd) return null;
  // Without any section it is no torn DXF but no DXF at all.
  if (records.sections.length === 0) return null;
  if (missingEnd.torn) return cutOff(missingEnd, 'in the middle of a group');
  if (records.openAtEnd && !records.sections.includes('ENTITIES')) {
    return cutOff(missingEnd, `in section ${records.openAtEnd}, before any entity`);
  }
  return null;
}

const cutOff = (missingEnd: MissingEnd | null, where: string) =>
  failed(
    'drawing-cut-off',
    `The file is cut off: it ends ${where}`,
    missingEnd ? `line ${missingEnd.line}` : 'end of the file',
    'Copy or export the drawing again, whole.',
  );

function missingEndDamage(pairs: Pairs, records: DrawingRecords): Damage[] {
  const { missingEnd } = pairs;
  if (records.openAtEnd !== null) {
    const at = missingEnd ? `the file ends there, on line ${missingEnd.line}` : 'EOF follows at once';
    const say = `Section ${records.openAtEnd} has no ENDSEC: ${at}. It was ended; check that nothing of the part is missing.`;
    const mayLack = missingEnd !== null && ['ENTITIES', 'BLOCKS'].includes(records.openAtEnd);
    return [{ weight: mayLack ? 'decide' : 'note', say }];
  }
  return missingEnd ? [{ weight: 'note', say: `EOF is missing after line ${missingEnd.line}; put in.` }] : [];
}

/** An LWPOLYLINE states its number of vertices (group 90): fewer means that some were lost on the way. */
function lostVertices(parsed: ParsedDrawing): Damage[] {
  const lists = [parsed.entities, ...[...parsed.blocks.values()].map((block) => block.entities)];
  const damage: Damage[] = [];
  for (const entity of lists.flat()) {
    if (entity.kind !== 'LWPOLYLINE') continue;
    const stated = valueOf(entity.groups, 90);
    const found = entity.groups.filter(({ code }) => code === 10).length;
    if (stated === undefined || stated === found) continue;
    const say = `An LWPOLYLINE on layer ${entity.layer} states ${stated} vertices and has ${found}; check its outline.`;
    damage.push({ weight: 'decide', say });
  }
  return damage;
}

function isLastWhole(parsed: ParsedDrawing): boolean {
  const last = parsed.entities[parsed.entities.length - 1];
  if (!last) return true;
  const shape = pieceShape(last, unmoved);
  if ('reason' in shape && shape.reason === incomplete) return false;
  const stated = last.kind === 'LWPOLYLINE' ? valueOf(last.groups, 90) : undefined;
  return stated === undefined || stated <= last.groups.filter(({ code }) => code === 10).length;
}
