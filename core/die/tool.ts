import type { Contour, Region } from '../geometry/contour';
import type { PlateName } from '../part-name';

export type Arrangement = 'simple' | 'two stations' | 'compound';

/** A member as far as a tool needs to know it. */
export interface MemberOutline {
  readonly id: string;
  readonly designed: Region;
}

/** A contour that is blanked or pierced, where it is cut in the tool, with its punch and die. */
export interface ToolCut {
  readonly contourId: string;
  readonly use: 'blank' | 'pierce';
  readonly contour: Contour;
  readonly die: MemberOutline;
  readonly punch: MemberOutline;
  /** Openings of plates that fit the punch. */
  readonly plates: readonly (MemberOutline & { readonly plate: PlateName })[];
}

/** Everything that is cut in one stroke. */
export interface Tool {
  readonly id: 'blanking' | 'piercing' | 'tool';
  /** As it stands in a heading. */
  readonly name: string;
  readonly cuts: readonly ToolCut[];
}

/**
 * The tools of an arrangement. Simple: one that blanks and, where there are holes, another one that pierces them. In
 * two stations and compound, one tool does both in one stroke.
 */
export function toolsOf(arrangement: Arrangement, cuts: readonly ToolCut[]): readonly Tool[] {
  const blanks = cuts.filter(({ use }) => use === 'blank');
  const pierces = cuts.filter(({ use }) => use === 'pierce');
  const isBoth = blanks.length > 0 && pierces.length > 0;
  if (arrangement !== 'simple' && isBoth) {
    const name = arrangement === 'compound' ? 'Compound tool' : 'Pierce and blank';
    return [{ id: 'tool', name, cuts }];
  }
  return [
    ...(blanks.length > 0 ? [{ id: 'blanking', name: 'Blanking tool', cuts: blanks } as const] : []),
    ...(pierces.length > 0 ? [{ id: 'piercing', name: 'Piercing tool', cuts: pierces } as const] : []),
  ];
}
