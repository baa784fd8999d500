import type { BlockSheet } from '../../core/die/block-sheet';
import {
  blockByStockSource,
  blockFactorSource,
  leastDieWall,
  openingToEdge,
  screwEdge,
  sharpOpeningToEdge,
} from '../../core/die/die-rules';
import { saySource } from '../../core/die/sourced';
import type { Job } from '../../core/job';
import { formatLength, formatLengthNumber } from '../../core/units';
import { LengthInput } from '../controls/length-input';
import { Part } from '../drawing/part';
import { setBlock } from '../state/edits/set-block';
import { setRelief } from '../state/edits/set-relief';
import { editJob } from '../state/job-edit';
import { useApp, useAppState } from '../state/use-app';
import { Fact, Facts } from './fact';

/** The die block of one tool against its rules, and how often it can be reground. */
export function BlockPart({ job, name, block }: { job: Job; name: string; block: BlockSheet }) {
  const app = useApp();
  const unit = useAppState((state) => state.unit);
  const say = (mm: number) => formatLength(mm, unit);
  const { thickness, outline, wall, screws, isSharp } = block;
  const edgeRule = isSharp ? sharpOpeningToEdge : openingToEdge;
  const free = screws.filter(({ isFree }) => isFree).length;
  const size =
    outline === null
      ? 'no opening'
      : `${formatLengthNumber(outline.maxX - outline.minX, unit)} × ${say(outline.maxY - outline.minY)}`;
  return (
    <Part title={`Die block: ${name}`} aside={size}>
      <p className="part-line">
        It is{' '}
        <LengthInput
          label={`Height of the die block, ${name}`}
          value={block.height}
          onCommit={(height, turning) => editJob(app, setBlock, { role: 'die', height }, turning)}
        />{' '}
        high; a regrind takes{' '}
        <LengthInput
          label={`Taken by a regrind, ${name}`}
          value={job.relief.perGrind}
          onCommit={(perGrind, turning) => editJob(app, setRelief, { perGrind }, turning)}
        />
        .
      </p>
      <Facts label={`Die block, ${name}`}>
        <Fact
          label="Least height by force"
          source={`K ∛F, ${blockFactorSource}`}
          isBad={block.height < thickness.byForce}
        >
          {say(thickness.byForce)}
        </Fact>
        <Fact
          label="Least height by stock"
          source={blockByStockSource}
          isBad={block.height < thickness.byStock}
        >
          {say(thickness.byStock)}
        </Fact>
        <Fact
          label="Opening to edge"
          source={`${edgeRule.value} × height${isSharp ? ', sharp corners' : ''}: ${saySource(edgeRule)}`}
        >
          {say(block.edge)}
        </Fact>
        <Fact
          label="Narrowest wall"
          source={`at least ${say(block.leastWall)}, ${leastDieWall.value} t: ${saySource(leastDieWall)}`}
          isBad={wall !== null && wall.width < block.leastWall}
        >
          {wall ? say(wall.width) : 'none that is thin'}
        </Fact>
        <Fact
          label="Screws and dowels"
          source={`${screwEdge.value} diameters from edges and openings: ${saySource(screwEdge)}`}
          isBad={free < screws.length}
        >
          {free} of {screws.length} have room, {say(screws[0]?.diameter ?? 0)}
        </Fact>
        <Fact
          label="Regrinds left"
          source={`then ${say(block.growth)} wider per side for each; exit wider by ${say(block.exit)}`}
        >
          {block.regrinds}
        </Fact>
      </Facts>
    </Part>
  );
}
