import type { ToolSheet } from '../../core/die/die-set';
import { toolSection, type ToolSection } from '../../core/die/tool-section';
import type { Job } from '../../core/job';
import { shortNumber } from '../../core/say';
import { LengthInput } from '../controls/length-input';
import { jobOf } from '../state/app-state';
import { useApp, useAppState } from '../state/use-app';

/** Under the picture: every tool cut along a level line, with the clearance drawn larger than it is. */
export function SectionStrip() {
  const { store } = useApp();
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const pane = useAppState((state) => state.pane);
  const chosen = useAppState((state) => state.sectionAt);
  if (pane !== 'die set' || !job || !plan) return null;
  const { box } = plan.drawing;
  const y = chosen ?? (box.minY + box.maxY) / 2;
  const exaggeration = exaggerationOf(plan.clearance.perSide, box.maxX - box.minX);
  const sections = plan.dieSet.tools.flatMap((sheet) => {
    const section = toolSection(sheet, plan.dieSet.arrangement, y);
    return section ? [{ sheet, section }] : [];
  });
  return (
    <section className="section-strip" aria-label="Section">
      <p className="section-words">
        Section at y{' '}
        <LengthInput
          label="Height of the section in the drawing"
          value={y}
          mayBeNegative
          onCommit={(mm) => store.setState({ sectionAt: mm })}
        />
        , clearance drawn {shortNumber(exaggeration)} times its size
      </p>
      <div className="section-pictures">
        {sections.length === 0 && <p className="panel-note">No tool is cut at this height.</p>}
        {sections.map(({ sheet, section }) => (
          <SectionPicture
            key={sheet.tool.id}
            job={job}
            sheet={sheet}
            section={section}
            shift={(exaggeration - 1) * plan.clearance.perSide}
          />
        ))}
      </div>
    </section>
  );
}

/** The clearance as a hundredth and a half of the part's width, but never smaller than it is. */
const exaggerationOf = (clearance: number, width: number): number =>
  Math.max(1, Math.round((0.015 * width) / clearance));

interface SectionPictureProps {
  readonly job: Job;
  readonly sheet: ToolSheet;
  readonly section: ToolSection;
  /** By how much every punch is drawn narrower on each side, so that the clearance can be seen; mm. */
  readonly shift: number;
}

/** Heights of the picture in its own units; widths are the tool's, scaled to fit. */
const tall = { punch: 34, gap: 5, stock: 7, die: 44 } as const;
const wide = 400;

function SectionPicture({ job, sheet, section, shift }: SectionPictureProps) {
  const { whole, upper, lower } = section;
  const x = (mm: number) => ((mm - whole.from) / (whole.to - whole.from)) * wide;
  const top = { y: 0, height: tall.punch };
  const stock = { y: tall.punch + tall.gap, height: tall.stock };
  const bottom = { y: stock.y + tall.stock, height: tall.die };
  const bars = [
    ...upper.map((piece) => ({ ...piece, ...top })),
    ...lower.map((piece) => ({ ...piece, ...bottom })),
  ];
  return (
    <figure className="section-picture">
      <svg
        viewBox={`-2 -2 ${wide + 4} ${bottom.y + bottom.height + 4}`}
        role="img"
        aria-label={`Section of the ${sheet.tool.name.toLowerCase()}`}
      >
        <rect className="section-stock" x={x(whole.from)} y={stock.y} width={wide} height={stock.height} />
        {bars.map(({ steel, from, to, y, height }, k) => {
          // A punch drawn narrower shows the clearance; a piece of the die stays as it is.
          const inset = steel === 'punch' ? Math.min(shift, (to - from) / 2.5) : 0;
          return (
            <rect
              key={k}
              className={`section-${steel}`}
              x={x(from + inset)}
              y={y}
              width={Math.max(0.5, x(to - inset) - x(from + inset))}
              height={height}
            />
          );
        })}
      </svg>
      <figcaption>
        {sheet.tool.name}:{' '}
        {job.dieSet.arrangement === 'compound' && sheet.tool.id === 'tool'
          ? 'die above, punch below'
          : 'punch above, die below'}
      </figcaption>
    </figure>
  );
}
