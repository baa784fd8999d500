import { leastBlankWidth, leastHole, leastStockWall } from '../../die/die-rules';
import type { MaterialFamily } from '../../die/edge-types';
import { saySource, type Sourced } from '../../die/sourced';
import type { StockWall } from '../../die/stock-walls';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { sayLength } from '../../say';

/** Places of the piece itself that are narrower than its stock allows. */
export function pieceFindings(
  walls: readonly StockWall[],
  thickness: number,
  family: MaterialFamily | null,
): readonly Finding[] {
  return walls.flatMap((wall) => {
    const rule = ruleFor(wall.kind, family);
    const least = rule.value * thickness;
    if (wall.width >= least * (1 - hair)) return [];
    return [
      findingOf({
        code: 'piece-narrow',
        weight: 'decide',
        title: titles[wall.kind],
        message:
          `It is ${sayLength(wall.width)}; with this stock at least ${sayLength(least)} is usual, ` +
          `${rule.value} times the thickness (${saySource(rule)}).`,
        place: { ...wall.at, reach: 3 * wall.width },
        contourId: wall.contourId,
        numbers: [
          { label: 'width', value: wall.width, kind: 'length' },
          { label: 'least width', value: least, kind: 'length' },
        ],
        cures: [{ kind: 'other', say: cures[wall.kind] }],
      }),
    ];
  });
}

/** A wall of exactly the rule passes, whatever its last binary digit. */
const hair = 1 / 1_000_000;

function ruleFor(kind: StockWall['kind'], family: MaterialFamily | null): Sourced {
  switch (kind) {
    case 'hole':
      return leastHole(family);
    case 'blank':
      return leastBlankWidth;
    case 'between holes':
    case 'hole to edge':
      return leastStockWall;
  }
}

const titles: Readonly<Record<StockWall['kind'], string>> = {
  hole: 'A hole narrow for its stock',
  blank: 'A part of the blank narrow for its stock',
  'between holes': 'Little stock between two holes',
  'hole to edge': 'Little stock between a hole and the edge',
};

const cures: Readonly<Record<StockWall['kind'], string>> = {
  hole: 'Guide the punch to its tip, or drill the hole afterwards.',
  blank: 'Expect it to twist and the punch to wear: agree it with the customer.',
  'between holes': 'Pierce the two in different stations.',
  'hole to edge': 'Pierce after blanking, or expect the edge to bulge.',
};
