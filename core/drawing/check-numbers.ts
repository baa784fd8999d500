import { failed, type Problem } from '../problem';
import type { DrawingRecords, EntityRecord } from './drawing-records';
import { groupsOf, isCurveKind, isTextGroup, isWholeGroup } from './entity-groups';
import type { Pairs } from './read-pairs';

/**
 * The first number of the drawing's curves that is none, or null where all are sound. dxf-parser reads `1,5` and
 * `1D2` as 1 and `nan` as NaN without a word, and a part cut to such a number is scrap.
 */
export function badNumber(pairs: Pairs, records: DrawingRecords): Problem | null {
  for (const block of records.blocks) {
    const bad = badIn(pairs, 'BLOCK', block.from, block.to, blockGroups) ?? badInAll(pairs, block.entities);
    if (bad) return bad;
  }
  return badInAll(pairs, records.entities);
}

const blockGroups: ReadonlySet<number> = new Set([10, 20, 30, 70]);

/** No drawing unit makes a press part larger than this; beyond it doubles lose the same-point distance. */
const largest = 1e9;

function badInAll(pairs: Pairs, entities: readonly EntityRecord[]): Problem | null {
  for (const entity of entities) {
    if (!isCurveKind(entity.kind)) continue;
    const bad = badIn(pairs, entity.kind, entity.from, entity.to, groupsOf(entity.kind));
    if (bad) return bad;
    for (const vertex of entity.vertices) {
      const badVertex = badIn(pairs, 'VERTEX', vertex.from, vertex.to, groupsOf('VERTEX'));
      if (badVertex) return badVertex;
    }
  }
  return null;
}

function badIn(
  pairs: Pairs,
  kind: string,
  from: number,
  to: number,
  groups: ReadonlySet<number>,
): Problem | null {
  for (let i = from; i < to; i++) {
    const code = pairs.codes[i] as number;
    if (code === embeddedObject) return null;
    if (isTextGroup(code) || !groups.has(code)) continue;
    const text = (pairs.values[i] as string).trim();
    const line = pairs.lines[i] as number;
    const whole = isWholeGroup(code);
    if (!isNumber(text, whole)) {
      const what = `"${text}" is not a ${whole ? 'whole number' : 'number'} (group ${code} of a ${kind})`;
      return failed('drawing-bad-number', what, `line ${line}`, adviceFor(text)).problem;
    }
    if (!whole && Math.abs(Number(text)) > largest) {
      const what = `${text} is too large for a drawing (group ${code} of a ${kind})`;
      return failed(
        'drawing-bad-number',
        what,
        `line ${line}`,
        'Correct the number, or have the drawing exported again.',
      ).problem;
    }
  }
  return null;
}

/** From group 101 on an embedded object repeats the codes of its host with other meanings (from R2018). */
export const embeddedObject = 101;

const isNumber = (text: string, whole: boolean): boolean =>
  whole ? /^[-+]?\d{1,10}$/.test(text) : /^[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d{1,3})?$/.test(text);

function adviceFor(text: string): string {
  if (/^[-+]?\d+,\d+$/.test(text))
    return 'DXF writes a decimal point: export the drawing again with a point instead of the comma.';
  return 'Correct the number, or have the drawing exported again.';
}
