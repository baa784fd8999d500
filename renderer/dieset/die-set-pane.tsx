import { jobOf } from '../state/app-state';
import { useAppState } from '../state/use-app';
import { BlockPart } from './block-part';
import { ForcePart } from './force-part';
import { PunchPart } from './punch-part';
import { SectionsPart } from './sections-part';
import { StockPart } from './stock-part';
import { StripPart } from './strip-part';
import { ToolsPart } from './tools-part';

/** Everything a die maker signs besides the paths: stock, members, force, strength, block, sections, strip. */
export function DieSetPane() {
  const job = useAppState(jobOf);
  const dieSet = useAppState((state) => state.made?.plan.dieSet ?? null);
  if (!job) return null;
  return (
    <section className="reading" aria-label="Die set">
      <h2 className="unseen">Die set</h2>
      <StockPart job={job} />
      {dieSet && (
        <>
          <ToolsPart job={job} dieSet={dieSet} />
          <StripPart job={job} strip={dieSet.strip} />
          {dieSet.tools.map((sheet) => (
            <ForcePart key={sheet.tool.id} job={job} sheet={sheet} />
          ))}
          <PunchPart job={job} punches={dieSet.tools.flatMap(({ punches }) => punches)} />
          {dieSet.tools.map(({ tool, block }) => (
            <BlockPart key={tool.id} job={job} name={tool.name} block={block} />
          ))}
          <SectionsPart job={job} plans={dieSet.sections} />
        </>
      )}
    </section>
  );
}
