import { embeddedObject } from './check-numbers';
import type { DrawingRecords, EntityRecord } from './drawing-records';
import { groupsOf, isCurveKind, isTextGroup } from './entity-groups';
import type { Pairs } from './read-pairs';

/** Stands in for every kind of entity that is only counted; its own name follows in group 1. */
export const otherKind = 'OTHER';

/**
 * A regular DXF of just what is read, for dxf-parser: BLOCKS and ENTITIES, each once and ended, names decoded, blocks
 * under upper-case names that begin with "=" (lookup in DXF knows no case, and `__proto__` is then a name like any
 * other).
 */
export function mendedText(pairs: Pairs, records: DrawingRecords, decode: (latin: string) => string): string {
  const out: string[] = [];
  const put = (code: number, value: string): void => void out.push(String(code), value);
  const putRange = (from: number, to: number, groups: ReadonlySet<number>): void => {
    for (let i = from; i < to; i++) {
      const code = pairs.codes[i] as number;
      if (code === embeddedObject) return;
      if (!groups.has(code)) continue;
      const value = (pairs.values[i] as string).trim();
      if (code === 2) put(2, blockKey(decode(value)));
      else put(code, isTextGroup(code) ? decode(value) : value);
    }
  };
  const putEntity = (entity: EntityRecord): void => {
    put(0, isCurveKind(entity.kind) ? entity.kind : otherKind);
    if (!isCurveKind(entity.kind)) put(1, entity.kind);
    putRange(entity.from, entity.to, groupsOf(entity.kind));
    if (entity.kind !== 'POLYLINE') return;
    for (const vertex of entity.vertices) {
      put(0, 'VERTEX');
      putRange(vertex.from, vertex.to, groupsOf('VERTEX'));
    }
    put(0, 'SEQEND');
  };
  put(0, 'SECTION');
  put(2, 'BLOCKS');
  for (const block of records.blocks) {
    const value = (code: number): string => {
      for (let i = block.from; i < block.to; i++) {
        if (pairs.codes[i] === code) return (pairs.values[i] as string).trim();
      }
      return '';
    };
    put(0, 'BLOCK');
    put(2, blockKey(decode(value(2))));
    // dxf-parser wants the base point whole and in order.
    for (const code of [10, 20, 30, 70]) put(code, value(code) || '0');
    for (const entity of block.entities) putEntity(entity);
    put(0, 'ENDBLK');
  }
  put(0, 'ENDSEC');
  put(0, 'SECTION');
  put(2, 'ENTITIES');
  for (const entity of records.entities) putEntity(entity);
  put(0, 'ENDSEC');
  put(0, 'EOF');
  return out.join('\n');
}

/** The name a block is stored and looked up under. */
export const blockKey = (name: string): string => `=${name.toUpperCase()}`;
