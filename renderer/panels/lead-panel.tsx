import { mostTabs } from '../../core/cut-settings';
import type { Job } from '../../core/job';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { cutPlaces } from '../picture/cut-places';
import { setLead, type LeadChange } from '../state/edits/set-lead';
import { editJob } from '../state/job-edit';
import { showCut } from '../state/show-cut';
import { useApp, useAppState } from '../state/use-app';

/** How all cuts begin and hold their pieces, and the list of all start holes. */
export function LeadPanel({ job }: { job: Job }) {
  const app = useApp();
  const { lead } = job;
  const change = (part: LeadChange, turning = false) => editJob(app, setLead, part, turning);
  return (
    <>
      <table className="table" aria-label="Lead-ins and tabs">
        <tbody>
          <tr>
            <th scope="row">Lead-in</th>
            <td>
              <Choice
                label="Shape of the lead-in"
                value={lead.shape}
                text={shapeNames[lead.shape]}
                options={Object.entries(shapeNames).map(([value, name]) => ({
                  value: value as keyof typeof shapeNames,
                  name,
                }))}
                onChoose={(shape) => change({ shape })}
              />
              {lead.shape === 'tangent arc' && (
                <>
                  {' '}
                  of radius{' '}
                  <LengthInput
                    label="Lead-in radius"
                    value={lead.arcRadius}
                    onCommit={(arcRadius, turning) => change({ arcRadius }, turning)}
                  />
                </>
              )}
            </td>
          </tr>
          <tr>
            <th scope="row">Overlap</th>
            <td>
              <LengthInput
                label="Overlap"
                value={lead.overlap}
                mayBeZero
                onCommit={(overlap, turning) => change({ overlap }, turning)}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Holes of the drawing</th>
            <td>
              <Choice
                label="Holes of the drawing"
                value={lead.drawnHoles ? 'used' : 'left alone'}
                options={[
                  { value: 'used', name: 'threaded through where they lie in the waste' },
                  { value: 'left alone', name: 'left alone' },
                ]}
                onChoose={(use) => change({ drawnHoles: use === 'used' })}
              />
            </td>
          </tr>
          <tr>
            <th scope="row">Tabs</th>
            <td>
              <Choice
                label="Tab rule"
                value={lead.tabRule}
                options={[
                  { value: 'weight', name: 'by weight and perimeter of the piece' },
                  { value: 'typed', name: 'as typed' },
                ]}
                onChoose={(tabRule) => change({ tabRule })}
              />
              {lead.tabRule === 'typed' && (
                <>
                  {', '}
                  <Choice
                    label="Number of tabs"
                    value={String(lead.tabs)}
                    options={Array.from({ length: mostTabs }, (_, i) => String(i + 1)).map((count) => ({
                      value: count,
                      name: count,
                    }))}
                    onChoose={(count) => change({ tabs: Number(count) })}
                  />{' '}
                  of{' '}
                  <LengthInput
                    label="Tab length"
                    value={lead.tabLength}
                    mayBeZero
                    onCommit={(tabLength, turning) => change({ tabLength }, turning)}
                  />
                </>
              )}
            </td>
          </tr>
        </tbody>
      </table>
      <StartHoles />
    </>
  );
}

export const shapeNames: Readonly<Record<Job['lead']['shape'], string>> = {
  perpendicular: 'square on the contour',
  straight: 'straight from the hole',
  'tangent arc': 'by a tangent arc',
};

/** Each row opens its cut on the picture. */
function StartHoles() {
  const app = useApp();
  const plan = useAppState((state) => state.made?.plan ?? null);
  const unit = useAppState((state) => state.unit);
  if (!plan) return null;
  return (
    <div className="panel-scroll">
      <table className="table">
        <caption>Start holes</caption>
        <tbody>
          {cutPlaces(plan).map((place) => (
            <tr key={`${place.cutId}/${place.stretch}`}>
              <th scope="row">
                <button type="button" className="button button-small" onClick={() => showCut(app, place)}>
                  {place.cutId}
                  {place.stretch > 0 ? ` (${place.stretch + 1})` : ''}
                </button>
              </th>
              <td>
                {place.start
                  ? `x ${formatLength(place.start.x, unit)}, y ${formatLength(place.start.y, unit)}`
                  : 'none fits'}
              </td>
              <td>
                {place.start &&
                  (place.start.kind === 'edge' ? 'edge' : `⌀ ${formatLength(place.start.diameter, unit)}`)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
