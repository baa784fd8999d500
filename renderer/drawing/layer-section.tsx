import type { DrawingSurvey, SurveyedLayer } from '../../core/drawing/survey-drawing';
import type { Job } from '../../core/job';
import { setChoice } from '../state/edits/set-choice';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { Part } from './part';
import { TickRow } from './tick-row';

/** The layers that hold curves, each to be taken or not; those that are off or frozen are not, unless chosen. */
export function LayerSection({ job, survey: { layers } }: { job: Job; survey: DrawingSurvey }) {
  const app = useApp();
  const chosen = job.drawing.choice.layers;
  // Layer names know no case in DXF.
  const wanted = chosen && new Set(chosen.map((name) => name.toUpperCase()));
  const isTaken = ({ name, hidden }: SurveyedLayer) => wanted?.has(name.toUpperCase()) ?? hidden === null;
  const toggle = (layer: SurveyedLayer) => {
    const taken = layers.filter((other) => isTaken(other) !== (other === layer));
    const isRule =
      taken.length > 0 && layers.every((other) => taken.includes(other) === (other.hidden === null));
    editJob(app, setChoice, { layers: isRule ? null : taken.map(({ name }) => name) });
  };
  return (
    <Part title="Layers" aside={chosen ? 'chosen by hand' : 'all that are shown'}>
      <ul className="plain-rows">
        {layers.map((layer) => (
          <TickRow
            key={layer.name}
            label={`Layer ${layer.name}`}
            name={layer.name}
            aside={layer.hidden?.replace('layer is ', '') ?? ''}
            count={layer.pieces}
            isTicked={isTaken(layer)}
            target={{ kind: 'layer', layer: layer.name }}
            onToggle={() => toggle(layer)}
          />
        ))}
      </ul>
    </Part>
  );
}
