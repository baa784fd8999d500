import type { StripPlan } from '../../core/die/strip-plan';
import { leastBridge } from '../../core/die/strip-rules';
import { saySource } from '../../core/die/sourced';
import type { DieSetSettings } from '../../core/die-set-settings';
import type { Job } from '../../core/job';
import { sayAngle, shortNumber } from '../../core/say';
import { formatLength } from '../../core/units';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { AngleInput } from '../controls/number-input';
import { Part } from '../drawing/part';
import { setDieSet } from '../state/edits/set-die-set';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { Fact, Facts } from './fact';
import { StripPicture } from './strip-picture';

type Strip = DieSetSettings['strip'];

/** The blank on its strip. */
export function StripPart({ job, strip }: { job: Job; strip: StripPlan | null }) {
  const app = useApp();
  const choice = job.dieSet.strip;
  const change = (part: Partial<Strip>, say: string, turning = false) =>
    editJob(app, setDieSet, { say, change: { strip: { ...choice, ...part } } }, turning);
  return (
    <Part
      title="Strip"
      {...(strip ? { aside: `${shortNumber(100 * strip.layout.used)} % of the stock used` } : {})}
    >
      <p className="part-line">
        Blanks lie{' '}
        <Choice<Strip['up']>
          label="Blanks on the strip"
          value={choice.up}
          text={choice.up === 'none' ? 'on no strip yet' : choice.up}
          options={[
            { value: 'none', name: 'on no strip yet' },
            { value: 'one up', name: 'one up' },
            { value: 'two up', name: 'two up' },
          ]}
          onChoose={(up) => change({ up }, `Strip: ${up}`)}
        />
        {choice.up !== 'none' && strip && <StripChoices choice={choice} strip={strip} change={change} />}.
      </p>
      {strip && <StripFacts strip={strip} />}
      {strip && <StripPicture strip={strip} />}
    </Part>
  );
}

interface StripChoicesProps {
  readonly choice: Strip;
  readonly strip: StripPlan;
  readonly change: (part: Partial<Strip>, say: string, turning?: boolean) => void;
}

function StripChoices({ choice, strip, change }: StripChoicesProps) {
  const turn = strip.layout.places[0]?.turn ?? 0;
  return (
    <>
      , turned{' '}
      <Choice<'searched' | 'typed'>
        label="Turn of the blank"
        value={choice.turn === null ? 'searched' : 'typed'}
        text={choice.turn === null ? `to use least stock (${sayAngle(turn)})` : 'by'}
        options={[
          { value: 'searched', name: 'to use least stock' },
          { value: 'typed', name: 'by an angle', aside: 'for the grain, say' },
        ]}
        onChoose={(chosen) => change({ turn: chosen === 'typed' ? turn : null }, 'Turn of the blank')}
      />
      {choice.turn !== null && (
        <>
          {' '}
          <AngleInput
            label="Angle of the blank"
            value={choice.turn}
            onCommit={(angle, turning) => change({ turn: angle }, 'Angle of the blank', turning)}
          />
        </>
      )}
      , bridge{' '}
      <LengthInput
        label="Scrap bridge"
        value={strip.layout.bridge}
        onCommit={(bridge, turning) => change({ bridge }, 'Scrap bridge', turning)}
      />
      , edge{' '}
      <LengthInput
        label="Edge of the strip"
        value={strip.layout.edge}
        onCommit={(edge, turning) => change({ edge }, 'Edge of the strip', turning)}
      />
      {(choice.bridge !== null || choice.edge !== null) && (
        <>
          {' '}
          <button
            type="button"
            className="button button-small"
            onClick={() => change({ bridge: null, edge: null }, 'Bridge and edge by the rule')}
          >
            By the rule
          </button>
        </>
      )}
      , pilots{' '}
      <LengthInput
        label="Diameter of the pilots"
        value={choice.pilot}
        onCommit={(pilot, turning) => change({ pilot }, 'Diameter of the pilots', turning)}
      />
    </>
  );
}

function StripFacts({ strip: { layout, pilots, leastBridge: least } }: { strip: StripPlan }) {
  const unit = useAppState((state) => state.unit);
  const say = (mm: number) => formatLength(mm, unit);
  return (
    <Facts label="Strip">
      <Fact label="Width of the strip">{say(layout.width)}</Fact>
      <Fact label="Feed" source="exact: at this step the bridge is just kept">
        {say(layout.feed)}
      </Fact>
      <Fact label="Bridge by the rule" source={saySource(leastBridge)} isBad={layout.bridge < least * 0.999}>
        {say(least)}
      </Fact>
      <Fact label="Stock used" source="outline of the blanks over the strip">
        {shortNumber(100 * layout.used)} %
      </Fact>
      <Fact label="Pilots">
        {pilots.length === 0
          ? 'no place'
          : pilots[0]?.where === 'piece'
            ? `in ${pilots.length} ${pilots.length === 1 ? 'hole' : 'holes'} of the piece`
            : 'in the scrap'}
      </Fact>
    </Facts>
  );
}
