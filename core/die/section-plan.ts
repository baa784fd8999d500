import type { Box, Region } from '../geometry/contour';
import type { Section } from './section';
import { sectionMeasures, type SectionMeasure } from './section-measures';
import { splitDie } from './split-die';
import type { SplitPlace } from './split-places';
import { splitPunch } from './split-punch';

/** A member split into sections, with what is measured on each. */
export interface SectionPlan {
  readonly memberId: string;
  readonly role: 'die' | 'punch';
  readonly sections: readonly MeasuredSection[];
  /** Corners that no joint could be led from. */
  readonly unreached: readonly SplitPlace[];
}

export interface MeasuredSection {
  readonly section: Section;
  readonly measures: readonly SectionMeasure[];
}

export interface SectionsQuery {
  readonly memberId: string;
  readonly role: 'die' | 'punch';
  readonly designed: Region;
  /** For a die: the other openings of its block, and the block. */
  readonly others: Region;
  readonly block: Box | null;
  readonly reach: number;
  readonly stock: number;
}

/** The sections of one member; none where no corner is too tight, or where it is not one plain contour. */
export function sectionPlan(query: SectionsQuery): SectionPlan {
  const { memberId, role, designed, block } = query;
  const [contour, ...more] = designed;
  const none = { memberId, role, sections: [], unreached: [] };
  if (!contour || more.length > 0) return none;
  if (role === 'punch') return { ...none, sections: measured(splitPunch({ ...query, contour })) };
  if (!block) return none;
  const { sections, unreached } = splitDie({ ...query, opening: contour, block });
  return { ...none, sections: measured(sections), unreached };
}

const measured = (sections: readonly Section[]): readonly MeasuredSection[] =>
  sections.map((section) => ({ section, measures: sectionMeasures(section) }));
