import type { DrawingSurvey } from '../../core/drawing/survey-drawing';
import type { Job } from '../../core/job';
import { setChoice } from '../state/edits/set-choice';
import { editJob } from '../state/job-edit';
import { useApp } from '../state/use-app';
import { colourLook } from './colour-look';
import { Part } from './part';
import { TickRow } from './tick-row';

/** The colours that curves are drawn in, each to be taken or not; nothing to choose where there is one only. */
export function ColourSection({ job, survey: { colours, format } }: { job: Job; survey: DrawingSurvey }) {
  const app = useApp();
  const chosen = job.drawing.choice.colours;
  if (colours.length < 2 && chosen === null) return null;
  const isTaken = (colour: number) => chosen?.includes(colour) ?? true;
  const toggle = (colour: number) => {
    const taken = colours
      .map((other) => other.colour)
      .filter((other) => isTaken(other) !== (other === colour));
    editJob(app, setChoice, { colours: taken.length === colours.length ? null : taken });
  };
  return (
    <Part title="Colours" aside={chosen ? 'chosen by hand' : 'all of them'}>
      <ul className="plain-rows">
        {colours.map(({ colour, pieces }) => {
          const { name, css } = colourLook(colour, format);
          return (
            <TickRow
              key={colour}
              label={`Colour ${name}`}
              name={name}
              swatch={css}
              aside=""
              count={pieces}
              isTicked={isTaken(colour)}
              target={{ kind: 'colour', colour }}
              onToggle={() => toggle(colour)}
            />
          );
        })}
      </ul>
    </Part>
  );
}
