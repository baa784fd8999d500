import type { CornerRules } from '../../core/die/corner-rules';
import type { Job } from '../../core/job';
import { PanelValue } from '../controls/panel-value';
import { CornerRuleValue } from '../corners/corner-rule-value';
import { CornersPanel } from '../panels/corners-panel';
import { setCornerRule } from '../state/edits/set-corner-rule';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';

/** "punch corners as drawn, die corners as drawn, the wire rolling round them," */
export function CornersValue({ job }: { job: Job }) {
  const app = useApp();
  return (
    <>
      {(['punch', 'die'] as const).map((role) => (
        <span key={role}>
          {role} corners{' '}
          <span className="glued">
            <CornerRuleValue
              label={`${role === 'punch' ? 'Punch' : 'Die'} corners`}
              side="outside"
              other={role === 'punch' ? 'die' : 'punch'}
              rule={job.corners[role].outside}
              startRadius={startRadius}
              onChange={(rule, turning) =>
                editJob(
                  app,
                  setCornerRule,
                  { role, side: 'outside', rule: rule ?? { rule: 'as drawn' } },
                  turning,
                )
              }
            />
            ,
          </span>{' '}
        </span>
      ))}
      <span className="glued">
        <PanelValue label="All about corners" text={cornersText(job.corners)} title="Corners">
          <CornersPanel job={job} />
        </PanelValue>
        ,
      </span>
    </>
  );
}

/** mm. */
const startRadius = 0.2;

function cornersText({ path, exceptions, punch, die }: CornerRules): string {
  const own = exceptions.length;
  const fillets = [punch, die].some(({ inside }) => inside.rule !== 'as drawn');
  return [
    path === 'sharp' ? 'the wire running on past them' : 'the wire rolling round them',
    ...(fillets ? ['inside ones filleted'] : []),
    ...(own > 0 ? [`${own} with ${own === 1 ? 'its' : 'their'} own rules`] : []),
  ].join(', ');
}
