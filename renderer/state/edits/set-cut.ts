import { noChoice, noStretch, type CutChoice, type StretchChoice } from '../../../core/cut-settings';
import type { JobEdit } from '../job-edit';

export interface CutChange {
  readonly cutId: string;
  /** Null values: as all others again. */
  readonly change?: Partial<Omit<CutChoice, 'stretches'>>;
  readonly stretch?: { readonly number: number; readonly change: Partial<StretchChoice> };
}

/** What is chosen for one cut against the rules for all: start holes, places of lead-ins and tabs, slug. */
export const setCut: JobEdit<CutChange> = {
  id: 'set-cut',
  undo: 'merge',
  part: ({ cutId, change = {}, stretch }) =>
    [cutId, ...Object.keys(change), stretch?.number ?? '', ...Object.keys(stretch?.change ?? {})].join('/'),
  label: ({ cutId, change = {}, stretch }) => {
    const named = [...Object.keys(stretch?.change ?? {}), ...Object.keys(change)][0] as keyof typeof words;
    return `${words[named] ?? 'Choices'} of ${cutId}`;
  },
  apply: (job, change) => {
    const next = withChange(job.cuts[change.cutId] ?? noChoice, change);
    const { [change.cutId]: _old, ...others } = job.cuts;
    return { ...job, cuts: isNoChoice(next) ? others : { ...others, [change.cutId]: next } };
  },
};

/** Gives a cut back to the rules for all. */
export const clearCut: JobEdit<string> = {
  id: 'clear-cut',
  undo: 'step',
  label: (cutId) => `${cutId} by the rules for all`,
  apply: (job, cutId) => {
    const { [cutId]: _old, ...others } = job.cuts;
    return { ...job, cuts: others };
  },
};

const words = {
  hole: 'Start hole',
  holeDiameter: 'Start hole diameter',
  place: 'Place of the lead-in',
  tabLength: 'Tab length',
  tabs: 'Number of tabs',
  slug: 'Slug',
  fromEdge: 'Start',
} as const;

/** A choice with a change made to it. */
export function withChange(choice: CutChoice, { change = {}, stretch }: Omit<CutChange, 'cutId'>): CutChoice {
  if (!stretch) return { ...choice, ...change };
  const count = Math.max(choice.stretches.length, stretch.number + 1);
  const stretches = Array.from({ length: count }, (_, i) => ({
    ...(choice.stretches[i] ?? noStretch),
    ...(i === stretch.number ? stretch.change : {}),
  }));
  while (stretches.length > 0 && isNoStretch(stretches.at(-1) ?? noStretch)) stretches.pop();
  return { ...choice, ...change, stretches };
}

const isNoStretch = (stretch: StretchChoice): boolean =>
  Object.values(stretch).every((value) => value === null);

const isNoChoice = ({ tabs, slug, fromEdge, stretches }: CutChoice): boolean =>
  tabs === null && slug === null && !fromEdge && stretches.length === 0;
