import type { Point } from '../../core/geometry/contour';
import type { MeasuredParts } from '../../core/inspect/inspection';
import { noMotion, type Motion } from '../../core/inspect/motion';
import type { PairClearance } from '../../core/inspect/pair-clearance';
import type { ListedPoint } from '../../core/inspect/read-points';
import type { Job } from '../../core/job';
import type { Reading } from '../../core/inspect/reading';
import type { SnapPlace } from '../../core/inspect/snap-place';
import type { Revision, RevisionQuestion } from '../../core/revision';

/** What is looked at beside the picture. */
export const inspectSections = ['clearance', 'points', 'measuring', 'sheets', 'revision'] as const;
export type InspectSection = (typeof inspectSections)[number];

/** A list of measured points that waits for its unit. */
export interface WaitingPoints {
  readonly fileName: string;
  readonly points: readonly ListedPoint[];
  readonly likely: 'mm' | 'inch' | null;
}

/** A comparison with another revision. */
export interface MadeRevision {
  readonly revision: Revision;
  /** What the other file is. */
  readonly kind: RevisionQuestion['kind'];
  /** The open job that was compared: once it is edited, the comparison is no longer of it. */
  readonly of: Job;
  readonly fileName: string;
}

/** What the window knows of inspection. Answers carry what they were asked for, so that a late one is told apart. */
export interface InspectState {
  readonly section: InspectSection;
  /** The pair that is looked at; null the first. */
  readonly contourId: string | null;
  /** Where its punch stands. */
  readonly motion: Motion;
  readonly picture: 'map' | 'light';
  /** How many times as wide the light test draws the gap. */
  readonly gapTimes: number;
  readonly clearance: PairClearance | null;
  /** Places along the punch, mm: pointed at, and held by a click. */
  readonly pointedStation: number | null;
  readonly heldStation: number | null;
  readonly measured: MeasuredParts | null;
  /** Index of the set that is looked at. */
  readonly set: number;
  /** How many times as long whiskers are drawn; null as fits. */
  readonly whiskerTimes: number | null;
  /** The contour of the measured pair whose real clearance is shown instead of deviations; null: none. */
  readonly shownPairId: string | null;
  readonly waitingPoints: WaitingPoints | null;
  readonly tool: Reading['kind'] | null;
  readonly picks: readonly Point[];
  readonly snap: SnapPlace | null;
  /** What the picks came to, until it is pinned or the next is begun. */
  readonly reading: Reading | null;
  readonly revision: MadeRevision | null;
  /** The row of a list that is pointed at: a measured point or a changed place. */
  readonly pointedRow: number | null;
  readonly busy: boolean;
}

export const emptyInspect: InspectState = {
  section: 'clearance',
  contourId: null,
  motion: noMotion,
  picture: 'map',
  gapTimes: 10,
  clearance: null,
  pointedStation: null,
  heldStation: null,
  measured: null,
  set: 0,
  whiskerTimes: null,
  shownPairId: null,
  waitingPoints: null,
  tool: null,
  picks: [],
  snap: null,
  reading: null,
  revision: null,
  pointedRow: null,
  busy: false,
};
