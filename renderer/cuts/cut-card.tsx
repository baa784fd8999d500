import { RotateCcw } from 'lucide-react';
import { noChoice, noStretch } from '../../core/cut-settings';
import type { Job } from '../../core/job';
import { cutOfPlan } from '../../core/layout-of-cut';
import type { Plan, StartHole } from '../../core/plan';
import { Choice } from '../controls/choice';
import { CoordinateInput } from '../controls/coordinate-input';
import { LengthInput } from '../controls/length-input';
import { clearCut, setCut, type CutChange } from '../state/edits/set-cut';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { cutPlaces } from '../picture/cut-places';
import { sameCut, type CutName } from '../state/cut-name';

/** One stretch of a cut: its start hole, where its lead-in and tab lie, and what its whole cut has of its own. */
export function CutCard({ job, plan, name }: { job: Job; plan: Plan; name: CutName }) {
  const app = useApp();
  const owned = cutOfPlan(plan, name.cutId);
  const place = cutPlaces(plan).find((one) => sameCut(one, name));
  if (!owned || !place) return <p className="panel-note">This is not cut any more.</p>;
  const { cut } = owned;
  const choice = job.cuts[cut.id] ?? noChoice;
  const chosen = choice.stretches[name.stretch] ?? noStretch;
  const start = cut.starts[name.stretch] ?? null;
  const tab = cut.tabs[(name.stretch + cut.tabs.length - 1) % Math.max(1, cut.tabs.length)];
  const change = (part: Omit<CutChange, 'cutId'>, turning = false) =>
    editJob(app, setCut, { cutId: cut.id, ...part }, turning);
  const own = (part: NonNullable<CutChange['stretch']>['change'], turning = false) =>
    change({ stretch: { number: name.stretch, change: part } }, turning);
  return (
    <>
      <p className="panel-note">
        {cut.id}
        {cut.starts.length > 1 ? `, stretch ${name.stretch + 1} of ${cut.starts.length}` : ''}
      </p>
      <table className="table" aria-label="Start hole, lead-in and tab">
        <tbody>
          {start && start.kind !== 'edge' && (
            <>
              <Row head="Start hole" aside={originOf(start, chosen.hole !== null)}>
                <CoordinateInput
                  label="Start hole x"
                  value={start.x}
                  onCommit={(x, turning) => own({ hole: { x, y: start.y } }, turning)}
                />{' '}
                <CoordinateInput
                  label="Start hole y"
                  value={start.y}
                  onCommit={(y, turning) => own({ hole: { x: start.x, y } }, turning)}
                />
              </Row>
              <Row head="Its diameter" aside={chosen.holeDiameter === null ? 'as all others' : 'its own'}>
                <LengthInput
                  label="Diameter of this start hole"
                  value={start.diameter}
                  onCommit={(holeDiameter, turning) => own({ holeDiameter }, turning)}
                />
              </Row>
            </>
          )}
          <Row
            head={tab ? 'Tab and lead-in' : 'Lead-in'}
            aside={chosen.place === null ? 'by the rule' : 'by hand'}
          >
            <CoordinateInput
              label="Lead-in x"
              value={place.at.x}
              onCommit={(x, turning) => own({ place: { x, y: place.at.y } }, turning)}
            />{' '}
            <CoordinateInput
              label="Lead-in y"
              value={place.at.y}
              onCommit={(y, turning) => own({ place: { x: place.at.x, y } }, turning)}
            />
          </Row>
          {tab && (
            <Row head="Length of the tab" aside={chosen.tabLength === null ? 'as all others' : 'its own'}>
              <LengthInput
                label="Length of this tab"
                value={tab.length}
                onCommit={(tabLength, turning) => own({ tabLength }, turning)}
              />
            </Row>
          )}
          <Row head="Tabs of this cut" aside="">
            <Choice
              label="Tabs of this cut"
              value={choice.tabs === null ? 'rule' : String(choice.tabs)}
              text={`${cut.tabs.length}${choice.tabs === null ? ', as all others' : ''}`}
              options={[
                { value: 'rule', name: 'as all others' },
                ...['0', '1', '2', '3', '4', '5', '6'].map((count) => ({ value: count, name: count })),
              ]}
              onChoose={(count) => change({ change: { tabs: count === 'rule' ? null : Number(count) } })}
            />
          </Row>
          {cut.waste === 'inside' ? (
            <Row head="The slug" aside="">
              <Choice
                label="Slug of this cut"
                value={choice.slug ?? 'rule'}
                text={`${cut.slug}${choice.slug === null ? ', as all others' : ''}`}
                options={[
                  { value: 'rule', name: 'as all others', aside: job.lead.slug },
                  { value: 'dropped', name: 'dropped after roughing' },
                  { value: 'kept', name: 'kept as a piece' },
                ]}
                onChoose={(slug) => change({ change: { slug: slug === 'rule' ? null : slug } })}
              />
            </Row>
          ) : (
            <Row head="Start" aside="">
              <Choice
                label="Start of this cut"
                value={choice.fromEdge ? 'edge' : 'hole'}
                options={[
                  { value: 'hole', name: 'through a hole' },
                  { value: 'edge', name: 'from the edge of the block', aside: 'the block may spring' },
                ]}
                onChoose={(from) => change({ change: { fromEdge: from === 'edge' } })}
              />
            </Row>
          )}
        </tbody>
      </table>
      {job.cuts[cut.id] && (
        <button type="button" className="button button-small" onClick={() => editJob(app, clearCut, cut.id)}>
          <RotateCcw aria-hidden="true" />
          As all others
        </button>
      )}
    </>
  );
}

function Row({ head, aside, children }: { head: string; aside: string; children: React.ReactNode }) {
  return (
    <tr>
      <th scope="row">{head}</th>
      <td>{children}</td>
      <td>{aside}</td>
    </tr>
  );
}

function originOf({ kind }: StartHole, isByHand: boolean): string {
  if (kind === 'drawn') return 'in the drawing';
  return isByHand ? 'by hand' : 'by the rule';
}
