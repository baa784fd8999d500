import type { Finding } from '../../finding';
import type { Job } from '../../job';
import type { Plan } from '../../plan';
import { formatLengthNumber } from '../../units';
import { placeBox, placeDrawing } from './place-drawing';
import { finishedPaper, newPaper } from './paper';
import type { SheetFonts } from './sheet-fonts';
import { SheetFlow } from './sheet-flow';
import { sheetHead } from './sheet-head';

/** Every finding with what was decided about it and why, and a picture of the places that a person had to judge. */
export function findingsSheet(job: Job, plan: Plan, fonts: SheetFonts): string {
  const paper = newPaper(job.sheet.page, 'portrait', fonts, sheetHead(job, plan, 'Findings'));
  const flow = new SheetFlow(paper);
  const { open } = plan.summary;
  flow.text(
    plan.findings.length === 0
      ? 'No findings.'
      : `${plan.findings.length} findings: ${open.stop} stop and ${open.decide} decide are open, ${open.note} are notes.`,
  );
  if (plan.findings.length > 0) {
    flow.table(
      [
        { name: 'No.' },
        { name: 'Weight' },
        { name: 'Finding' },
        { name: 'Place' },
        { name: 'Disposition and reason' },
      ],
      plan.findings.map((finding, k) => [
        String(k + 1),
        finding.weight,
        `${finding.title}. ${finding.message}`,
        placeOf(finding, job),
        dispositionOf(finding, job),
      ]),
    );
  }
  const shown = plan.findings.flatMap((finding, k) =>
    finding.place && finding.weight !== 'note' ? [{ finding, place: finding.place, number: k + 1 }] : [],
  );
  if (shown.length > 0) {
    flow.needs(70);
    flow.heading('Places');
  }
  for (const { finding, place, number } of shown.slice(0, mostPictures)) {
    flow.picture({
      box: placeBox(plan, finding.key, place),
      height: 44,
      say: `${number}. ${finding.title}${finding.memberId ? `, ${finding.memberId}` : ''}`,
      draw: (view) => placeDrawing(view, plan, finding.key),
    });
  }
  if (shown.length > mostPictures)
    flow.text(`The other ${shown.length - mostPictures} places are in the table only.`);
  return finishedPaper(paper);
}

/** Pictures beyond which a sheet becomes a book. */
const mostPictures = 40;

function placeOf({ place, memberId, contourId }: Finding, { output: { unit } }: Job): string {
  const at = place ? `x ${formatLengthNumber(place.x, unit)}, y ${formatLengthNumber(place.y, unit)}` : '';
  return [memberId ?? contourId ?? '', at].filter((part) => part !== '').join(': ');
}

function dispositionOf({ weight, key }: Finding, { settled }: Job): string {
  if (weight === 'stop') return 'OPEN: the job has to change';
  if (weight === 'note') return '–';
  const reason = settled[key]?.reason;
  return reason === undefined ? 'OPEN' : `accepted: ${reason}`;
}
