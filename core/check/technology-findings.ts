import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { PartName } from '../plan';
import { sayLength } from '../say';
import type { Technology } from '../technology';
import { tabulatedPasses } from '../wire/tabulated-passes';

export interface TechnologyQuery {
  readonly technology: Technology;
  /** Whether the passes are to be those of the table. */
  readonly byTable: boolean;
  /** Diameter, mm. */
  readonly wire: number;
  /** Heights of the parts that are made, mm. */
  readonly heights: readonly { readonly part: PartName; readonly height: number }[];
}

/** What the technology table has no answer for, and blocks that are too high for its machine. */
export function technologyFindings(query: TechnologyQuery): readonly Finding[] {
  const missing = query.byTable ? missingRows(query) : [];
  const { largestHeight } = query.technology.machine;
  const high = query.heights.filter(({ height }) => height > largestHeight);
  return [...missing, ...high.map(({ part, height }) => tooHigh(part, height, largestHeight))];
}

/** One finding, though the same wire is missing for several parts. */
function missingRows({ technology, wire, heights }: TechnologyQuery): readonly Finding[] {
  const problems = heights.flatMap(({ height }) => {
    const found = tabulatedPasses(technology, wire, height);
    return found.ok ? [] : [found.problem];
  });
  const unlike = problems.filter(({ what }, k) => problems.findIndex((one) => one.what === what) === k);
  return unlike.map(({ what, whatToDo }) =>
    findingOf({
      code: 'technology-no-row',
      weight: 'decide',
      title: 'No row of the technology table fits',
      message: `${what}. The passes are those from before: check gap and stock left.`,
      numbers: [{ label: 'wire', value: wire, kind: 'length' }],
      cures: [{ kind: 'other', say: whatToDo }],
    }),
  );
}

function tooHigh(part: PartName, height: number, largest: number): Finding {
  return findingOf({
    code: 'block-too-high',
    weight: 'decide',
    title: `The ${part}'s block is too high for the machine`,
    message: `The block is ${sayLength(height)} high; the machine of the technology table takes ${sayLength(largest)}.`,
    numbers: [
      { label: 'height of the block', value: height, kind: 'length' },
      { label: 'largest height', value: largest, kind: 'length' },
    ],
    cures: [{ kind: 'other', say: 'Take a lower block, or correct the height that the machine takes.' }],
  });
}
