import { Plus, Trash2 } from 'lucide-react';
import { measuringTargets } from '../../core/inspect/measuring-targets';
import type { Job } from '../../core/job';
import { magnifications } from '../../core/output/magnifications';
import { done } from '../../core/problem';
import { Choice } from '../controls/choice';
import { CommandButton } from '../controls/command-button';
import { ValueInput } from '../controls/value-input';
import { Part } from '../drawing/part';
import { jobOf } from '../state/app-state';
import { exportFilesCommand } from '../state/commands/export-files';
import { setSheet } from '../state/edits/set-sheet';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

/** What every sheet states, which overlay charts are wanted, and the way to write them. */
export function SheetsSection() {
  const app = useApp();
  const job = useAppState(jobOf);
  const released = useAppState((state) => state.made?.plan.released ?? false);
  if (!job) return null;
  const { sheet } = job;
  return (
    <>
      <Part title="On every page" aside={released ? 'RELEASED' : 'DRAFT'}>
        <p className="part-line">
          Revision{' '}
          <ValueInput
            label="Revision"
            text={sheet.revision || 'not stated'}
            read={(text) => done(text.trim())}
            onCommit={(revision) => editJob(app, setSheet, { revision })}
          />
          , date{' '}
          <ValueInput
            label="Date"
            text={sheet.date || 'not stated'}
            read={(text) => done(text.trim())}
            onCommit={(date) => editJob(app, setSheet, { date })}
          />
          , on{' '}
          <Choice
            label="Page size"
            value={sheet.page}
            options={[
              { value: 'A4', name: 'A4' },
              { value: 'letter', name: 'letter' },
            ]}
            onChoose={(page) => editJob(app, setSheet, { page })}
          />
          , lengths in {job.output.unit}.
        </p>
        <p className="panel-note">
          The program knows no clock: the date is what you state. Setup sheet, findings and inspection report
          are written with the files, as PDF with their tables as CSV.
        </p>
      </Part>
      <ChartsPart job={job} />
      <Part title="Write">
        <CommandButton
          command={exportFilesCommand}
          text={released ? 'Export files and sheets' : 'Export as draft'}
          strong
        />
      </Part>
    </>
  );
}

function ChartsPart({ job }: { job: Job }) {
  const app = useApp();
  const plan = useAppState((state) => state.made?.plan ?? null);
  const targets = plan ? measuringTargets(plan) : [];
  const { charts } = job.sheet;
  const set = (next: Job['sheet']['charts']) => editJob(app, setSheet, { charts: next });
  return (
    <Part title="Overlay charts" aside={`${charts.length} wanted`}>
      <p className="panel-note">
        The true profile with the limits of the profile tolerance, to lay over a comparator&rsquo;s screen.
      </p>
      <ul className="inspect-list">
        {charts.map(({ target, magnification }, k) => {
          const change = (part: Partial<(typeof charts)[number]>) =>
            set(charts.map((chart, i) => (i === k ? { ...chart, ...part } : chart)));
          return (
            <li key={k} className="plain-row">
              <Choice
                label={`Chart ${k + 1} of`}
                value={target}
                text={targets.find(({ id }) => id === target)?.name ?? 'something that is gone'}
                options={targets.map(({ id, name }) => ({ value: id, name }))}
                onChoose={(chosen) => change({ target: chosen })}
              />
              <Choice
                label={`Magnification of chart ${k + 1}`}
                value={String(magnification)}
                text={`${magnification} : 1`}
                options={magnifications.map((times) => ({ value: String(times), name: `${times} : 1` }))}
                onChoose={(times) => change({ magnification: Number(times) })}
              />
              <button
                type="button"
                className="icon-button"
                aria-label={`Take out chart ${k + 1}`}
                onClick={() => set(charts.filter((_, i) => i !== k))}
              >
                <Trash2 aria-hidden="true" />
              </button>
            </li>
          );
        })}
      </ul>
      <button
        type="button"
        className="button button-small"
        disabled={targets.length === 0}
        onClick={() => set([...charts, { target: targets[0]?.id ?? '', magnification: 10 }])}
      >
        <Plus aria-hidden="true" />
        Add a chart
      </button>
    </Part>
  );
}
