import type { SectionPlan } from '../../core/die/section-plan';
import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { sayAngle } from '../../core/say';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { Part } from '../drawing/part';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';

type Sections = DieSetSettings['sections'];

/** Members split through corners that no wire cuts, to be ground open. */
export function SectionsPart({ job, plans }: { job: Job; plans: readonly SectionPlan[] }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const { sections } = job.dieSet;
  const change = (part: Partial<Sections>, say: string, turning = false) =>
    editJob(app, setDieSet, { say, change: { sections: { ...sections, ...part } } }, turning);
  const split = plans.filter((plan) => plan.sections.length > 0);
  const count = split.reduce((sum, plan) => sum + plan.sections.length, 0);
  return (
    <Part title="Sections" aside={count > 0 ? `${count}` : 'none'}>
      <p className="part-line">
        Split through corners tighter than the wire:{' '}
        <Choice<Sections['of']>
          label="Members that are split"
          value={sections.of}
          options={[
            { value: 'none', name: 'nothing' },
            { value: 'die', name: 'the die' },
            { value: 'punch', name: 'the punch' },
            { value: 'both', name: 'die and punch' },
          ]}
          onChoose={(of) => change({ of }, `Sections of ${of}`)}
        />
        {sections.of !== 'none' && (
          <>
            , with{' '}
            <LengthInput
              label="Stock left for grinding"
              value={sections.stock}
              onCommit={(stock, turning) => change({ stock }, 'Stock left for grinding', turning)}
            />{' '}
            left for grinding
          </>
        )}
        .
      </p>
      {sections.of !== 'none' && count === 0 && (
        <p className="panel-note">No corner is tighter than the wire in use.</p>
      )}
      <ul className="plain-rows" aria-label="Sections">
        {split.flatMap((plan) =>
          plan.sections.map(({ section, measures }) => (
            <li key={section.id} className="tool-part">
              <span>{section.id}</span>
              <span className="panel-note">
                {section.joints.length} joints,{' '}
                {section.wheelRadius === null
                  ? 'any wheel'
                  : `wheel of ${formatLength(section.wheelRadius, unit)} or less`}
                {measures.map(
                  ({ pin, nook }) =>
                    `; face at ${sayAngle(nook)}: over pin ${formatLength(pin.pin, unit)}${pin.stack > 0 ? ` on ${formatLength(pin.stack, unit)} of blocks` : ''} ${formatLength(pin.overPin, unit)}`,
                )}
              </span>
            </li>
          )),
        )}
      </ul>
    </Part>
  );
}
