import { ToggleGroup } from 'radix-ui';
import { inspectSections, type InspectSection } from '../state/inspect-state';
import { setInspect } from '../state/set-inspect';
import { useApp, useAppState } from '../state/use-app';
import { ClearanceSection } from './clearance-section';
import { MeasuringSection } from './measuring-section';
import { PointsSection } from './points-section';
import { RevisionSection } from './revision-section';
import { SheetsSection } from './sheets-section';

const names: Readonly<Record<InspectSection, string>> = {
  clearance: 'Clearance',
  points: 'Points',
  measuring: 'Measure',
  sheets: 'Sheets',
  revision: 'Revision',
};

/** How punch and die fit each other and the drawing, and what goes onto paper. */
export function InspectPane() {
  const app = useApp();
  const section = useAppState((state) => state.inspect.section);
  const hasPlan = useAppState((state) => state.made !== null);
  if (!hasPlan) return <p className="panel-note side-note">There is nothing to inspect yet.</p>;
  return (
    <section className="reading" aria-label="Inspection">
      <h2 className="unseen">Inspection</h2>
      <ToggleGroup.Root
        className="switch inspect-sections"
        type="single"
        aria-label="What is inspected"
        value={section}
        onValueChange={(chosen) => {
          if (chosen) setInspect(app, { section: chosen as InspectSection, pointedRow: null });
        }}
      >
        {inspectSections.map((one) => (
          <ToggleGroup.Item key={one} className="switch-item" value={one}>
            {names[one]}
          </ToggleGroup.Item>
        ))}
      </ToggleGroup.Root>
      {section === 'clearance' && <ClearanceSection />}
      {section === 'points' && <PointsSection />}
      {section === 'measuring' && <MeasuringSection />}
      {section === 'sheets' && <SheetsSection />}
      {section === 'revision' && <RevisionSection />}
    </section>
  );
}
