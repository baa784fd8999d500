import type { Job } from '../../job';
import type { Plan } from '../../plan';
import { draftMark } from '../cautions';

/** What every page states. */
export interface SheetHead {
  readonly title: string;
  readonly job: string;
  readonly drawing: string;
  readonly revision: string;
  readonly date: string;
  readonly units: string;
  readonly released: boolean;
  /** DRAFT with its reason, or RELEASED. */
  readonly state: string;
}

/** Revision and date are what the user stated: where nothing was, the sheet says so. */
export function sheetHead(job: Job, plan: Plan, title: string): SheetHead {
  return {
    title,
    job: job.name,
    drawing: job.drawing.fileName,
    revision: job.sheet.revision.trim() || 'not stated',
    date: job.sheet.date.trim() || 'not stated',
    units: job.output.unit === 'inch' ? 'inch' : 'mm',
    released: plan.released,
    state: plan.released ? 'RELEASED' : draftMark.replaceAll(' - ', ' – '),
  };
}
