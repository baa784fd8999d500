import type { Job } from '../../../core/job';
import type { JobEdit } from '../job-edit';

export type LeadChange = Partial<Job['lead']>;

/** Start hole, lead-in, tab and direction. */
export const setLead: JobEdit<LeadChange> = {
  id: 'set-lead',
  undo: 'merge',
  part: (change) => Object.keys(change).join(),
  label: (change) => {
    const key = (Object.keys(change) as (keyof LeadChange)[])[0] ?? 'length';
    return names[key];
  },
  apply: (job, change) => ({ ...job, lead: { ...job.lead, ...change } }),
};

const names: Readonly<Record<keyof LeadChange, string>> = {
  holeDiameter: 'Start hole diameter',
  holeClearance: 'Start hole clearance',
  length: 'Lead-in length',
  shape: 'Shape of the lead-in',
  arcRadius: 'Lead-in radius',
  overlap: 'Overlap',
  drawnHoles: 'Holes of the drawing',
  tabRule: 'Tab length',
  tabLength: 'Tab length',
  tabs: 'Number of tabs',
  slug: 'What becomes of the slug',
  direction: 'Cutting direction',
};
