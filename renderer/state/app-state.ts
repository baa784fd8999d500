import type { SectionLine } from '../../core/die/tool-section';
import type { Drawing } from '../../core/drawing/drawing';
import type { SurveyedDrawing } from '../../core/drawing-stages';
import type { Job } from '../../core/job';
import type { ProgramVerdict } from '../../core/output/verify-program';
import type { OpenedJob } from '../../core/open-job-file';
import type { Problem } from '../../core/problem';
import type { DisplayUnit } from '../../core/units';
import type { HostFile, KeptDraft } from '../../electron/contract/host-api';
import { newReplay, type Replay } from '../replay/replay';
import type { CutDrag, CutHandle, CutName } from './cut-name';
import type { History } from './history';
import { emptyInspect, type InspectState } from './inspect-state';
import type { MadePlan } from './made-plan';
import type { Target } from './target';
import type { DrawingPoint, Size, Viewport } from './viewport';

/**
 * Beside the picture: what has to be settled, how it is cut, how the drawing is read, the die set, or how punch and die
 * fit. The picture shows what it is about.
 */
export type Pane = 'review' | 'cut' | 'drawing' | 'die-set' | 'inspect';

/** A corner of the drawing: its contour, and its place there as the drawing has it, mm. */
export interface CornerName {
  readonly contourId: string;
  readonly x: number;
  readonly y: number;
}

/** What the picture is made of, by what it is about; each can be switched off in the legend. */
export const pictureParts = {
  review: ['drawing', 'die', 'punch', 'plates', 'relief', 'remainder', 'path', 'findings'],
  cut: ['drawing', 'die', 'punch', 'plates', 'relief', 'remainder', 'block', 'path'],
  drawing: ['edges', 'left out', 'lines', 'repairs'],
  'die-set': ['drawing', 'die', 'punch', 'plates', 'die block', 'strip', 'pressure', 'sections'],
  inspect: ['die', 'punch', 'as designed', 'readings'],
} as const;
export type PicturePart = (typeof pictureParts)[Pane][number];

export type ThemeChoice = 'system' | 'light' | 'dark';
export type DialogName = 'about' | 'keys' | 'technology' | 'stock';

/** Everything the window shows. Derived geometry lives in `made` only, and is never edited. */
export interface AppState {
  readonly pane: Pane;
  readonly history: History<Job> | null;
  /** Where the job was opened from or saved to, and the job as it is there. */
  readonly file: { readonly token: string | null; readonly saved: Job | null };
  readonly made: MadePlan | null;
  /** Why the present job has no plan; null while it has one or none was asked for. */
  readonly problem: Problem | null;
  /** A failed action (open, save, export) that leaves the job as it was. */
  readonly trouble: Problem | null;
  /** Set while a plan is being made. */
  readonly progress: { readonly step: string; readonly fraction: number } | null;
  /** What is to be seen of the drawing as such; null until it is there. */
  readonly survey: SurveyedDrawing | null;
  /** The job whose drawing the survey is of. */
  readonly surveyed: Job | null;
  /** The unit of the drawing is being asked for. */
  readonly unitAsked: boolean;
  /** A file that waits for the answer whether unsaved changes may go. */
  readonly waiting: HostFile | null;
  /** Unsaved work of earlier windows that waits for an answer. */
  readonly leftOver: readonly KeptDraft[];
  /** What of the opened job file could not be trusted, until it has been read. */
  readonly distrust: OpenedJob | null;
  /** What became of a program file that was held against the job; null when it has been read. */
  readonly verified: { readonly name: string; readonly verdict: ProgramVerdict } | null;
  /** Why the job was not saved where it came from: somebody else has changed the file. */
  readonly clash: Problem | null;
  /** What was done last, for the status line. */
  readonly said: string;
  readonly selected: Target | null;
  readonly hovered: Target | null;
  /** The corner under the pointer, and the one whose rules are open. */
  readonly pointedCorner: CornerName | null;
  readonly openCorner: CornerName | null;
  /** The cut whose values are open, what of a cut is being dragged, and what the pointer could take hold of. */
  readonly openCut: CutName | null;
  readonly draggedCut: CutDrag | null;
  readonly pointedCut: CutHandle | null;
  readonly viewport: Viewport;
  readonly canvasSize: Size;
  /** The picture is to be fitted as soon as there is one. */
  readonly fitPending: boolean;
  readonly pointer: DrawingPoint | null;
  readonly hidden: readonly PicturePart[];
  readonly unit: DisplayUnit;
  readonly theme: ThemeChoice;
  /** What the choice comes to now. */
  readonly shownTheme: 'light' | 'dark';
  readonly dialog: DialogName | null;
  /** The line through the drawing along which the section strip cuts; null: through its middle, along the strip. */
  readonly sectionAt: SectionLine | null;
  readonly inspect: InspectState;
  /** The review list shows settled findings and notes too. */
  readonly showAll: boolean;
  readonly replay: Replay;
}

export const emptyState: AppState = {
  pane: 'review',
  history: null,
  file: { token: null, saved: null },
  made: null,
  problem: null,
  trouble: null,
  progress: null,
  survey: null,
  surveyed: null,
  unitAsked: false,
  waiting: null,
  leftOver: [],
  distrust: null,
  verified: null,
  clash: null,
  said: '',
  selected: null,
  hovered: null,
  pointedCorner: null,
  openCorner: null,
  openCut: null,
  draggedCut: null,
  pointedCut: null,
  viewport: { centre: { x: 0, y: 0 }, scale: 10 },
  canvasSize: { width: 800, height: 600 },
  fitPending: false,
  pointer: null,
  hidden: [],
  unit: 'mm',
  theme: 'system',
  shownTheme: 'light',
  dialog: null,
  sectionAt: null,
  inspect: emptyInspect,
  showAll: true,
  replay: newReplay,
};

/** The drawing's contours as they are now; null while there are none. */
export const drawingOf = ({ survey }: AppState): Drawing | null => survey?.drawing ?? null;

export const jobOf = (state: AppState): Job | null => state.history?.present ?? null;

/** Whether the job differs from what is on disk. */
export const isChanged = (state: AppState): boolean => {
  const job = jobOf(state);
  return job !== null && job !== state.file.saved;
};
