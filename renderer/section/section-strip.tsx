import { toolSection, type SectionLine } from '../../core/die/tool-section';
import { shortNumber } from '../../core/say';
import { Choice } from '../controls/choice';
import { LengthInput } from '../controls/length-input';
import { jobOf } from '../state/app-state';
import { middleLine, sectionLineOf } from '../state/section-line';
import { useApp, useAppState } from '../state/use-app';
import { SectionPicture } from './section-picture';

/** Under the picture: every tool cut open along a line, with the clearance drawn larger than it is. */
export function SectionStrip() {
  const { store } = useApp();
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const pane = useAppState((state) => state.pane);
  const chosen = useAppState((state) => state.sectionAt);
  if (pane !== 'die-set' || !job || !plan || plan.dieSet.tools.length === 0) return null;
  const { box } = plan.drawing;
  const line = sectionLineOf(plan, chosen);
  const exaggeration = exaggerationOf(plan.clearance.perSide, box.maxX - box.minX);
  const sections = plan.dieSet.tools.flatMap((sheet) => {
    const section = toolSection(sheet, plan.dieSet.arrangement, line);
    return section ? [{ sheet, section }] : [];
  });
  return (
    <section className="section-strip" aria-label="Section">
      <p className="section-words">
        Cut open{' '}
        <Choice<SectionLine['runs']>
          label="Direction of the section"
          value={line.runs}
          text={line.runs === 'level' ? 'at y' : 'at x'}
          options={[
            { value: 'level', name: 'at y', aside: 'along a level line' },
            { value: 'upright', name: 'at x', aside: 'along an upright line' },
          ]}
          onChoose={(runs) => store.setState({ sectionAt: middleLine(plan, runs) })}
        />{' '}
        <LengthInput
          label="Place of the section in the drawing"
          value={line.at}
          mayBeNegative
          onCommit={(at) => store.setState({ sectionAt: { ...line, at } })}
        />
        , clearance and relief drawn {shortNumber(exaggeration)} times their size
      </p>
      <div className="section-pictures">
        {sections.length === 0 && <p className="panel-note">No tool is cut here.</p>}
        {sections.map(({ sheet, section }) => (
          <SectionPicture
            key={sheet.tool.id}
            sheet={sheet}
            section={section}
            clearance={plan.clearance.perSide}
            exaggeration={exaggeration}
          />
        ))}
      </div>
    </section>
  );
}

/** The clearance as a hundredth and a half of the part's width, but never smaller than it is. */
const exaggerationOf = (clearance: number, width: number): number =>
  Math.max(1, Math.round((0.015 * width) / clearance));
