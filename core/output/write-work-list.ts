import type { Plan } from '../plan';
import { csvText } from './csv-text';
import { workRows } from './work-rows';

/** Every block's order of work as CSV (RFC 4180): threadings, passes and stops, and at which someone has to be there. */
export function writeWorkList(plan: Plan): string {
  const rows = plan.blocks.flatMap((block) =>
    workRows(plan, block).map(({ kind, cutId, say, attended }, k) => [
      block.id,
      String(k + 1),
      kind,
      cutId,
      say,
      attended ? 'attended' : 'unattended',
    ]),
  );
  return csvText([['block', 'step', 'what', 'cut', 'detail', 'someone there'], ...rows]);
}
