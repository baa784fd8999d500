import type { Contour } from '../../core/geometry/contour';
import { newJob } from '../../core/job';
import { createPipeline } from '../../core/pipeline';
import { filletedOutline } from './outlines';
import { processorUsed } from './processor-time';

export interface ProofMeasure {
  readonly segments: number;
  readonly seconds: number;
  readonly passed: boolean;
  readonly gouge: number;
}

/**
 * What a job of 10,000 lines and arcs needs to be proved: the programs of punch and die read back, held against what was
 * intended, kept clear of the members and swept by clipper-lib. Processor time of the thread, s.
 */
export function measureProof(): ProofMeasure {
  const outline = filletedOutline(10_000);
  let before: number | null = null;
  let seconds = NaN;
  const planned = createPipeline().plan(newJob('outline.dxf', drawingOf(outline)), (step) => {
    if (step === 'Proving the programs') before = processorUsed();
    else if (before !== null) seconds = processorUsed() - before;
  });
  if (!planned.ok) throw new Error(planned.problem.what);
  const proofs = planned.value.pairs.flatMap(({ die, punch }) => [die.proof, punch.proof]);
  return {
    segments: outline.length,
    seconds,
    passed: proofs.every(({ passed }) => passed),
    gouge: Math.max(...proofs.map(({ gouge }) => gouge)),
  };
}

function drawingOf(outline: Contour): string {
  const pairs = (...words: readonly (string | number)[]) => words.map(String);
  return [
    ...pairs(0, 'SECTION', 2, 'HEADER', 9, '$INSUNITS', 70, 4, 0, 'ENDSEC', 0, 'SECTION', 2, 'ENTITIES'),
    ...pairs(0, 'LWPOLYLINE', 8, 'CUT', 90, outline.length, 70, 1),
    ...outline.flatMap(({ x, y, bulge }) => pairs(10, x, 20, y, 42, bulge)),
    ...pairs(0, 'ENDSEC', 0, 'EOF', ''),
  ].join('\n');
}
