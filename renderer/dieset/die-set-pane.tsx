import { jobOf } from '../state/app-state';
import { useAppState } from '../state/use-app';
import { BlockPart } from './block-part';
import { MatesPart } from './mates-part';
import { PlatesPart } from './plates-part';
import { ForcePart, StrokePart } from './force-part';
import { OneBlockPart } from './one-block-part';
import { PunchPart } from './punch-part';
import { SectionsPart } from './sections-part';
import { StockPart } from './stock-part';
import { StripPart } from './strip-part';
import { ToolsPart } from './tools-part';

/** Everything a die maker signs besides the paths: stock, members, force, strength, block, sections, strip. */
export function DieSetPane() {
  const job = useAppState(jobOf);
  const plan = useAppState((state) => state.made?.plan ?? null);
  const dieSet = plan?.dieSet;
  if (!job) return null;
  return (
    <section className="reading" aria-label="Die set">
      <h2 className="unseen">Die set</h2>
      <StockPart job={job} />
      {plan && dieSet && (
        <>
          <MatesPart job={job} plan={plan} />
          {dieSet.tools.length > 0 && (
            <>
              <ToolsPart job={job} dieSet={dieSet} clearance={plan.clearance.perSide} />
              <PlatesPart job={job} pairs={plan.pairs} />
              <StripPart job={job} strip={dieSet.strip} />
              <StrokePart job={job} />
            </>
          )}
          {dieSet.tools.map((sheet) => (
            <ForcePart key={sheet.tool.id} sheet={sheet} />
          ))}
          {dieSet.tools.length > 0 && (
            <PunchPart job={job} punches={dieSet.tools.flatMap(({ punches }) => punches)} />
          )}
          {dieSet.tools.map(({ tool, block }) => (
            <BlockPart key={tool.id} job={job} name={tool.name} block={block} />
          ))}
          <SectionsPart job={job} plans={dieSet.sections} />
          {dieSet.tools.length > 0 && <OneBlockPart job={job} blocks={dieSet.oneBlocks} />}
        </>
      )}
    </section>
  );
}
