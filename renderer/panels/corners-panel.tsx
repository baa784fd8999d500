import { Eye, Trash2 } from 'lucide-react';
import type { CornerException, CornerPath } from '../../core/die/corner-rules';
import type { Job } from '../../core/job';
import { formatLengthNumber } from '../../core/units';
import { done, failed } from '../../core/problem';
import { Choice } from '../controls/choice';
import { ValueInput } from '../controls/value-input';
import { CornerRuleValue } from '../corners/corner-rule-value';
import { pathNames } from '../corners/corner-card';
import { setCorner } from '../state/edits/set-corner';
import { setCornerPath } from '../state/edits/set-corner-path';
import { cornerRuleWords, setCornerRule } from '../state/edits/set-corner-rule';
import { editJob } from '../state/job-edit';
import { showCorner } from '../state/show-corner';
import { useApp, useAppState } from '../state/use-app';

const members = ['punch', 'die'] as const;
const sides = ['outside', 'inside'] as const;

/** The rules for all corners, and the corners that have their own. */
export function CornersPanel({ job }: { job: Job }) {
  const app = useApp();
  const { corners } = job;
  return (
    <>
      <table className="table" aria-label="Rules of both members">
        <tbody>
          {members.flatMap((role) =>
            sides.map((side) => (
              <tr key={`${role}/${side}`}>
                <th scope="row">
                  {role === 'punch' ? 'Punch' : 'Die'}, {side} corners
                </th>
                <td>
                  <CornerRuleValue
                    label={`All ${side} corners of the ${role}`}
                    side={side}
                    other={role === 'punch' ? 'die' : 'punch'}
                    rule={corners[role][side]}
                    startRadius={startRadius}
                    onChange={(rule, turning) =>
                      editJob(app, setCornerRule, { role, side, rule: rule ?? { rule: 'as drawn' } }, turning)
                    }
                  />
                </td>
              </tr>
            )),
          )}
          <tr>
            <th scope="row">Wire round outside corners</th>
            <td>
              <Choice<CornerPath>
                label="Wire round all corners"
                value={corners.path}
                options={[
                  { value: 'rolling', name: pathNames.rolling },
                  { value: 'sharp', name: pathNames.sharp },
                ]}
                onChoose={(path) => editJob(app, setCornerPath, { path })}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Past a corner at most</th>
            <td>
              <ValueInput<number>
                label="Offsets past a corner"
                text={String(corners.miterLimit)}
                read={readLimit}
                onCommit={(miterLimit, turning) => editJob(app, setCornerPath, { miterLimit }, turning)}
                stepped={(by) => Math.max(1, Number((corners.miterLimit + by / 10).toFixed(6)))}
              />{' '}
              offsets, then cut off square
            </td>
          </tr>
        </tbody>
      </table>
      <Exceptions job={job} />
    </>
  );
}

/** mm: common practice for a corner that need not be sharp. */
const startRadius = 0.2;

function readLimit(text: string) {
  const limit = Number(text.trim().replace(',', '.'));
  return limit >= 1 && Number.isFinite(limit)
    ? done(limit)
    : failed(
        'miter-limit',
        `"${text.trim()}" is no number from 1 up`,
        '',
        'Type how many offsets past the corner, such as 2.',
      );
}

function Exceptions({ job }: { job: Job }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { exceptions } = job.corners;
  if (exceptions.length === 0) {
    return (
      <p className="panel-note">Click a corner in the picture, or press C, to give it rules of its own.</p>
    );
  }
  return (
    <div className="panel-scroll">
      <table className="table">
        <caption>Corners with rules of their own</caption>
        <tbody>
          {exceptions.map((exception) => {
            const { contourId, x, y } = exception;
            const where = `${contourId}, x ${formatLengthNumber(x, unit)} y ${formatLengthNumber(y, unit)}`;
            return (
              <tr key={where}>
                <th scope="row">{where}</th>
                <td>{exceptionWords(exception, unit)}</td>
                <td>
                  <button
                    type="button"
                    className="icon-button"
                    aria-label={`Show the corner of ${where}`}
                    onClick={() => showCorner(app, { contourId, x, y })}
                  >
                    <Eye aria-hidden="true" />
                  </button>
                  <button
                    type="button"
                    className="icon-button"
                    aria-label={`As all others: ${where}`}
                    onClick={() =>
                      editJob(app, setCorner, {
                        corner: { contourId, x, y },
                        change: { inside: null, outside: null, path: null },
                      })
                    }
                  >
                    <Trash2 aria-hidden="true" />
                  </button>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}

function exceptionWords({ inside, outside, path }: CornerException, unit: 'mm' | 'inch'): string {
  return [
    ...(inside ? [`inside ${cornerRuleWords(inside, unit)}`] : []),
    ...(outside ? [`outside ${cornerRuleWords(outside, unit)}`] : []),
    ...(path ? [`wire ${pathNames[path]}`] : []),
  ].join(', ');
}
