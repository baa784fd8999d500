import type { DieSet } from '../../die/die-set';
import type { MaterialFamily } from '../../die/edge-types';
import type { Finding } from '../../finding';
import type { Problem } from '../../problem';
import { dieBlockFindings } from './block-findings';
import { dieEdgeFindings, type DieBlock } from './die-edge-findings';
import { forceFindings, type Knockout } from './force-findings';
import { oneBlockFindings } from './one-block-findings';
import { pieceFindings } from './piece-findings';
import { sectionFindings } from './section-findings';
import { strengthFindings } from './strength-findings';
import { stripFindings } from './strip-findings';

export interface DieSetChecks {
  readonly dieSet: DieSet;
  readonly problems: readonly { readonly contourId: string; readonly problem: Problem }[];
  readonly thickness: number;
  readonly knockout: Knockout;
  /** Blocks that dies are cut from, with what lies in them. */
  readonly dieBlocks: readonly DieBlock[];
  readonly family: MaterialFamily | null;
  /** Largest angle of the machine's wire to the vertical, degrees. */
  readonly largestTaperDeg: number;
}

/** Everything about the die set that a person has to know or settle, each with its rule and source. */
export function dieSetFindings(checks: DieSetChecks): readonly Finding[] {
  const { dieSet, problems, thickness, family, largestTaperDeg, knockout, dieBlocks } = checks;
  return [
    ...pieceFindings(dieSet.walls, thickness, family),
    ...dieSet.tools.flatMap((sheet) => [
      ...forceFindings(sheet, knockout),
      ...strengthFindings(sheet, thickness),
      ...dieBlockFindings(sheet),
    ]),
    ...dieBlocks.flatMap(dieEdgeFindings),
    ...sectionFindings(dieSet.sections),
    ...(dieSet.strip ? stripFindings(dieSet.strip) : []),
    ...oneBlockFindings(dieSet.oneBlocks, problems, largestTaperDeg),
  ];
}
