import { Check, RotateCcw } from 'lucide-react';
import type { CornerPath } from '../../core/die/corner-rules';
import type { Job } from '../../core/job';
import type { MemberRole, Plan } from '../../core/plan';
import { sayAngle } from '../../core/say';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import type { CornerName } from '../state/app-state';
import { setCorner, type CornerChange } from '../state/edits/set-corner';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { cornerFacts, type CornerFacts } from './corner-facts';
import { CornerRuleValue } from './corner-rule-value';

/** One corner of the drawing: its rules in both members, the wire's way round it, and what would match. */
export function CornerCard({ job, plan, name }: { job: Job; plan: Plan; name: CornerName }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const facts = cornerFacts(job, plan, name);
  if (!facts) return <p className="panel-note">This corner is not cut.</p>;
  const { corner, fit } = facts;
  const change = (part: CornerChange['change'], turning = false) =>
    editJob(app, setCorner, { corner: name, change: part }, turning);
  const { insideMember: inside } = corner;
  const outside = fit.outsideMember;
  return (
    <>
      <p className="panel-note">
        Contour {name.contourId}, {sayAngle(corner.place.angle)},{' '}
        {corner.place.drawnRadius > 0
          ? `drawn with a radius of ${formatLength(corner.place.drawnRadius, unit)}`
          : 'drawn sharp'}
        .
      </p>
      <table className="table" aria-label="Rules of this corner">
        <tbody>
          <tr>
            <th scope="row">{capital(inside)}, inside</th>
            <td>
              <CornerRuleValue
                label={`Inside corner of the ${inside}`}
                side="inside"
                other={outside}
                rule={corner.exception?.inside ?? null}
                ruleForAll={job.corners[inside].inside}
                startRadius={fit.insideRadius}
                onChange={(rule, turning) => change({ inside: rule }, turning)}
              />
            </td>
            <td>{radiusText(fit.insideRadius, unit)}</td>
          </tr>
          <tr>
            <th scope="row">{capital(outside)}, outside</th>
            <td>
              <CornerRuleValue
                label={`Outside corner of the ${outside}`}
                side="outside"
                other={inside}
                rule={corner.exception?.outside ?? null}
                ruleForAll={job.corners[outside].outside}
                startRadius={fit.matching.outside ?? (fit.outsideRadius || fit.insideRadius)}
                onChange={(rule, turning) => change({ outside: rule }, turning)}
              />
            </td>
            <td>{radiusText(fit.outsideRadius, unit)}</td>
          </tr>
          {fit.outsideRadius === 0 && (
            <tr>
              <th scope="row">Wire round the {outside}</th>
              <td>
                <Choice<CornerPath | 'by the rule'>
                  label="Wire round this corner"
                  value={corner.exception?.path ?? 'by the rule'}
                  text={pathNames[corner.path]}
                  options={[
                    { value: 'by the rule', name: 'as at all others', aside: pathNames[job.corners.path] },
                    { value: 'rolling', name: pathNames.rolling },
                    { value: 'sharp', name: pathNames.sharp },
                  ]}
                  onChoose={(path) => change({ path: path === 'by the rule' ? null : path })}
                />
              </td>
              <td />
            </tr>
          )}
        </tbody>
      </table>
      <Fit facts={facts} onMatch={change} />
      {corner.exception && (
        <button
          type="button"
          className="button button-small"
          onClick={() => change({ inside: null, outside: null, path: null })}
        >
          <RotateCcw aria-hidden="true" />
          As all others
        </button>
      )}
    </>
  );
}

export const pathNames: Readonly<Record<CornerPath, string>> = {
  rolling: 'rolls',
  sharp: 'runs on, sharp',
};

/** The clearance across the corner, and the radii that would make it even: each changes one member only. */
function Fit({
  facts: { corner, fit, clearance, use },
  onMatch,
}: {
  facts: CornerFacts;
  onMatch: (change: CornerChange['change']) => void;
}) {
  const unit = useAppState((state) => state.unit);
  const { matching, outsideMember, across } = fit;
  const length = (mm: number) => formatLength(mm, unit);
  if (matching.outside === null && matching.inside === null) {
    return (
      <p className="panel-note corner-even">
        <Check aria-hidden="true" /> The clearance is even here: {length(clearance)}.
      </p>
    );
  }
  const gives = use === 'pierce' ? 'punch' : 'die';
  const priced = (role: MemberRole) => (role === gives ? ' (changes the part)' : '');
  return (
    <div className="corner-match">
      <p className="panel-note">
        Clearance across the corner {length(across)} instead of {length(clearance)}. Even with:
      </p>
      {matching.outside !== null && (
        <button
          type="button"
          className="button button-small"
          onClick={() => onMatch({ outside: { rule: 'match' }, ...unmatched(corner.exception?.inside) })}
        >
          {capital(outsideMember)} {radiusText(matching.outside, unit)}
          {priced(outsideMember)}
        </button>
      )}
      {matching.inside !== null && (
        <button
          type="button"
          className="button button-small"
          onClick={() => onMatch({ inside: { rule: 'match' } })}
        >
          {capital(corner.insideMember)} {radiusText(matching.inside, unit)}
          {priced(corner.insideMember)}
        </button>
      )}
    </div>
  );
}

/** Where each would follow the other, the one just asked for follows and the other keeps to its rule. */
const unmatched = (inside: NonNullable<CornerFacts['corner']['exception']>['inside'] | undefined) =>
  inside?.rule === 'match' ? { inside: null } : {};

const radiusText = (mm: number, unit: 'mm' | 'inch'): string =>
  mm > 0 ? `r ${formatLength(mm, unit)}` : 'sharp';

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);
