import type { MeasuredSet } from '../../core/inspection-settings';
import { likelyUnit } from '../../core/inspect/likely-unit';
import { readPoints, type ListedPoint } from '../../core/inspect/read-points';
import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import { measuringTargets, type MeasuringTarget } from '../../core/inspect/measuring-targets';
import { mmPerInch } from '../../core/units';
import type { HostFile } from '../../electron/contract/host-api';
import type { App } from './app-store';
import { jobOf } from './app-state';
import { setInspection } from './edits/set-inspection';
import { editJob } from './job-edit';
import { setInspect } from './set-inspect';

/**
 * Takes a list of measured points in. Where the list does not state its unit, the question for it waits with the unit
 * in which the points are as large as the part.
 */
export function importPoints(app: App, file: HostFile): void {
  const { made } = app.store.getState();
  const list = readPoints(new TextDecoder('utf-8').decode(file.bytes));
  if (!list.ok) {
    app.store.setState({
      trouble: { ...list.problem, where: [file.name, list.problem.where].filter(Boolean).join(', ') },
    });
    return;
  }
  if (!made) return;
  const { unit, points } = list.value;
  if (unit) {
    addPoints(app, file.name, points, unit);
    return;
  }
  const profile = measuringTargets(made.plan)[0]?.profile ?? [];
  const likely = likelyUnit(points, profile.map(contourBox).reduce(boxAround, contourBox([])));
  setInspect(app, { waitingPoints: { fileName: file.name, points, likely } });
}

/** Adds the points in a unit to the job: one set for each feature that names a member, the rest together. */
export function addPoints(
  app: App,
  fileName: string,
  points: readonly ListedPoint[],
  unit: 'mm' | 'inch',
): void {
  const { made, inspect } = app.store.getState();
  const job = jobOf(app.store.getState());
  if (!made || !job) return;
  const perUnit = unit === 'inch' ? mmPerInch : 1;
  const targets = measuringTargets(made.plan);
  const groups = new Map<MeasuringTarget | null, ListedPoint[]>();
  for (const point of points) {
    const target = targetNamed(targets, point.feature);
    groups.set(target, [...(groups.get(target) ?? []), point]);
  }
  const stem = fileName.replace(/\.[^.]*$/, '');
  const sets = [...groups].map(([target, members]): MeasuredSet => ({
    name: target ? `${stem}, ${target.name}` : stem,
    fileName,
    target: (target ?? targets[0])?.id ?? '',
    points: members.map(({ x, y, id }) => ({ x: x * perUnit, y: y * perUnit, id })),
    fit: {
      method: 'least squares',
      freedom: { shiftX: true, shiftY: true, turn: true },
      outliers: 'keep',
    },
  }));
  const measured = [...job.inspection.measured, ...sets];
  editJob(app, setInspection, { change: { measured }, say: `Points of ${fileName}` });
  setInspect(app, { ...inspect, waitingPoints: null, set: measured.length - sets.length, section: 'points' });
}

/** A feature that names a member by its id, or, where there is one pair, by "punch" or "die". */
function targetNamed(targets: readonly MeasuringTarget[], feature: string): MeasuringTarget | null {
  const name = feature.trim().toLowerCase();
  if (name === '') return null;
  const [byId] = targets.filter(({ id }) => id.toLowerCase() === name);
  if (byId) return byId;
  const ofRole = targets.filter(({ id }) => id.endsWith(`-${name}`));
  return ofRole.length === 1 ? (ofRole[0] ?? null) : null;
}
