import { jobOf } from '../state/app-state';
import { useAppState } from '../state/use-app';
import { ColourSection } from './colour-section';
import { ContourSection } from './contour-section';
import { GapSection } from './gap-section';
import { LayerSection } from './layer-section';
import { RepairSection } from './repair-section';
import { RestSection } from './rest-section';
import { ToleranceSection } from './tolerance-section';
import { UnitSection } from './unit-section';

/** How the drawing is read: its unit, what of it is taken, what was put right, and what is left. */
export function DrawingPane() {
  const job = useAppState(jobOf);
  const survey = useAppState((state) => state.survey);
  if (!job) return null;
  if (!survey) return <p className="panel-note side-note">The drawing has not been read yet.</p>;
  const { drawing } = survey;
  return (
    <section className="reading" aria-label="Drawing">
      <h2 className="unseen">Drawing</h2>
      <UnitSection job={job} survey={survey} />
      {drawing && <ContourSection job={job} drawing={drawing} />}
      <LayerSection job={job} survey={survey} />
      <ColourSection job={job} survey={survey} />
      {survey.gaps && <GapSection job={job} gaps={survey.gaps} />}
      <RepairSection job={job} drawing={drawing} />
      {drawing && <ToleranceSection job={job} drawing={drawing} />}
      {drawing && <RestSection drawing={drawing} />}
    </section>
  );
}
