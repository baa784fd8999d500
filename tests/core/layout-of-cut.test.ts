import { expect, it } from 'vitest';
import { noChoice } from '../../core/cut-settings';
import { cutOfPlan, layoutOfCut } from '../../core/layout-of-cut';
import { createPipeline } from '../../core/pipeline';
import { jobOn } from '../support/dxf-of';
import { circle, square } from '../support/shapes';

it('places a cut as the plan does, with the same choice and with another', () => {
  const job = jobOn([square(20), circle(3, 10, 10)]);
  const plan = createPipeline().plan(job);
  if (!plan.ok) throw new Error(plan.problem.what);
  for (const { die, punch } of plan.value.pairs) {
    for (const cut of [...die.cuts, ...punch.cuts]) {
      const owned = cutOfPlan(plan.value, cut.id);
      const layout = owned && layoutOfCut(plan.value, job, owned, noChoice);
      expect(layout?.stretches.map(({ start }) => start)).toEqual(cut.starts);
      expect(layout?.tabs).toEqual(cut.tabs);
    }
  }
  const punch = cutOfPlan(plan.value, 'blank-c1-punch-1');
  const stretches = [{ hole: { x: 5, y: 5 }, holeDiameter: null, place: null, tabLength: null }];
  const choice = { ...noChoice, stretches };
  const refused = punch && layoutOfCut(plan.value, job, punch, choice);
  expect(refused?.troubles).toMatchObject([{ kind: 'hole', because: 'in the member itself' }]);
  // The plan itself says and does the same.
  const planned = createPipeline().plan({ ...job, cuts: { 'blank-c1-punch-1': choice } });
  if (!planned.ok) throw new Error(planned.problem.what);
  expect(planned.value.findings.map(({ title }) => title)).toContain('The chosen start hole is not allowed');
  expect(cutOfPlan(planned.value, 'blank-c1-punch-1')?.cut.starts).toEqual(
    refused?.stretches.map(({ start }) => start),
  );
  expect(cutOfPlan(plan.value, 'nothing')).toBeNull();
});
