import { done, failed, type Result } from '../problem';
import { drawingUnits, type DrawingUnit } from '../units';
import { blockUnitDamage } from './block-units';
import { drawingRecords, type DrawingRecords } from './drawing-records';
import { decodeName } from './drawing-text';
import { flattenDrawing, type FlatDrawing } from './flatten-drawing';
import { valueOf, valuesOf } from './group-values';
import { layerTable } from './layer-table';
import { textAt, type MissingEnd, type Pairs } from './pairs';
import { parseEntities, type ParsedDrawing } from './parse-entities';
import { piecesBox } from './piece-box';
import { pieceShape } from './piece-shape';
import type { Damage, RawDrawing } from './raw-drawing';
import { readDimensions } from './read-dimensions';
import { incomplete } from './shape';
import { untold, type Tell } from './tell';
import { unmoved } from './transform';

/**
 * Reads the group pairs of a DXF, R12 to 2018: records → entities → flat curves in drawing units. Damage that loses
 * nothing is mended and told; damage that may change the part is a problem with its line.
 */
export function readDxf(pairs: Pairs, tell: Tell = untold): Result<RawDrawing> {
  tell(0.3);
  const records = drawingRecords(pairs);
  tell(0.4);
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
  const header = (name: string): string => {
    const at = records.header.get(name);
    return at === undefined ? '' : textAt(pairs, at);
  };
  const [version, codePage] = [header('$ACADVER'), header('$DWGCODEPAGE')];
  const decode = (latin: string): string => decodeName(latin, version, codePage);
  const parsed = parseEntities(pairs, records, decode);
  if (!parsed.ok) return parsed;
  tell(0.7);
  if (records.openAtEnd === 'ENTITIES' && !isLastWhole(parsed.value))
    return cutOff(pairs, pairs.missingEnd, 'in the middle of an entity');
  const flat = flattenDrawing(parsed.value, layerTable(pairs, records, decode));
  if (!flat.ok) return flat;
  const { pieces, unused, texts, dimensions } = flat.value;
  const statedUnit = unitOfCode(header('$INSUNITS'));
  const damage = [
    ...pairs.damage,
    ...records.damage,
    ...missingEndDamage(pairs, records),
    ...lostVertices(parsed.value),
    ...blockUnitDamage(pairs, records, parsed.value, decode, statedUnit),
    ...remarkDamage(flat.value),
  ];
  return done({
    format: 'dxf',
    statedUnit,
    pieces,
    unused: unused.list(),
    damage,
    texts,
    dimensions: readDimensions(dimensions, pairs, records, decode),
    box: piecesBox(pieces),
  });
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
  // Text without any section is no torn DXF but no DXF at all; a binary one shows what it is by its first bytes.
  if (records.sections.length === 0 && pairs.placeWord === 'line') return null;
  if (missingEnd.torn) return cutOff(pairs, missingEnd, 'in the middle of a group');
  if (records.openAtEnd && !records.sections.includes('ENTITIES')) {
    return cutOff(pairs, missingEnd, `in section ${records.openAtEnd}, before any entity`);
  }
  return null;
}

const cutOff = (pairs: Pairs, missingEnd: MissingEnd | null, where: string) =>
  failed(
    'drawing-cut-off',
    `The ${pairs.placeWord === 'byte' ? 'binary DXF' : 'file'} is cut off: it ends ${where}`,
    missingEnd ? `${pairs.placeWord} ${missingEnd.place}` : 'end of the file',
    'Copy or export the drawing again, whole.',
  );

function missingEndDamage(pairs: Pairs, records: DrawingRecords): Damage[] {
  const { missingEnd } = pairs;
  const place = missingEnd && `${pairs.placeWord} ${missingEnd.place}`;
  if (records.openAtEnd !== null) {
    const at = place ? `the file ends there, on ${place}` : 'EOF follows at once';
    const say = `Section ${records.openAtEnd} has no ENDSEC: ${at}. It was ended; check that nothing of the part is missing.`;
    const mayLack = missingEnd !== null && ['ENTITIES', 'BLOCKS'].includes(records.openAtEnd);
    return [{ weight: mayLack ? 'decide' : 'note', say }];
  }
  return place ? [{ weight: 'note', say: `EOF is missing after ${place}; put in.` }] : [];
}

/** An LWPOLYLINE states its number of vertices (group 90): fewer means that some were lost on the way. */
function lostVertices(parsed: ParsedDrawing): Damage[] {
  const damage: Damage[] = [];
  for (const entities of [parsed.entities, ...[...parsed.blocks.values()].map((block) => block.entities)]) {
    for (const { kind, groups, layer } of entities) {
      if (kind !== 'LWPOLYLINE') continue;
      const stated = valueOf(groups, 90);
      const found = valuesOf(groups, 10).length;
      if (stated === undefined || stated === found) continue;
      const say = `An LWPOLYLINE on layer ${layer} states ${stated} vertices and has ${found}; check its outline.`;
      damage.push({ weight: 'decide', say });
    }
  }
  return damage;
}

const remarkDamage = ({ remarks }: FlatDrawing): Damage[] =>
  remarks.list().map(({ layer, kind, reason, count }) => ({
    weight: 'note',
    say: `${count} ${kind} on layer ${layer}: ${reason}.`,
  }));

function isLastWhole(parsed: ParsedDrawing): boolean {
  const last = parsed.entities[parsed.entities.length - 1];
  if (!last) return true;
  const shape = pieceShape(last, unmoved);
  if ('reason' in shape && shape.reason === incomplete) return false;
  const stated = last.kind === 'LWPOLYLINE' ? valueOf(last.groups, 90) : undefined;
  return stated === undefined || stated <= valuesOf(last.groups, 10).length;
}
