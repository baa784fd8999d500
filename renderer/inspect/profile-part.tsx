import type { Job } from '../../core/job';
import { sayTolerance, zoneLimits } from '../../core/inspect/profile-tolerance';
import { formatLength } from '../../core/units';
import { LengthInput } from '../controls/length-input';
import { Part } from '../drawing/part';
import { setInspection } from '../state/edits/set-inspection';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** The profile tolerance: its whole width, and how much of it lies outside the material. */
export function ProfilePart({ job }: { job: Job }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { profile } = job.inspection;
  const { low, high } = zoneLimits(profile);
  const set = (change: Partial<typeof profile>, turning: boolean) =>
    editJob(
      app,
      setInspection,
      { change: { profile: { ...profile, ...change } }, say: 'Profile tolerance' },
      turning,
    );
  const length = (mm: number) => formatLength(mm, unit);
  return (
    <Part title="Profile tolerance" aside={`${length(low)} to ${length(high)}`}>
      <p className="part-line">
        A zone{' '}
        <LengthInput
          label="Width of the profile zone"
          value={profile.width}
          onCommit={(width, turning) => set({ width }, turning)}
        />{' '}
        wide,{' '}
        <LengthInput
          label="Of it outside the material"
          mayBeNegative
          value={high}
          onCommit={(outside, turning) => set({ outside }, turning)}
        />{' '}
        of it outside the material.
      </p>
      <label className="tick part-line">
        <input
          type="checkbox"
          checked={profile.outside === null}
          onChange={({ target }) => set({ outside: target.checked ? null : high }, false)}
        />
        Half on either side
      </label>
      <p className="panel-note part-line">On the drawing: {sayTolerance(profile, length)}</p>
    </Part>
  );
}
