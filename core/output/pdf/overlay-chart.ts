import type { Region } from '../../geometry/contour';
import { boxAround, contourBox } from '../../geometry/contour-measures';
import { offsetRegion } from '../../geometry/offset-region';
import type { MeasuringTarget } from '../../inspect/measuring-targets';
import { zoneLimits, type ProfileTolerance } from '../../inspect/profile-tolerance';
import type { Job } from '../../job';
import type { Plan } from '../../plan';
import { done, failed, type Result } from '../../problem';
import { formatLength } from '../../units';
import { colours } from './member-drawing';
import { chartPage, chartPageArea, crossHairs } from './overlay-page';
import { overlayTiles, type Tile, type Tiling } from './overlay-tiles';
import { finishedPaper, newPaper, paperArea, writeText, type Paper } from './paper';
import { setStroke, strokeRegion, viewOf, type PaperView } from './paper-view';
import type { SheetFonts } from './sheet-fonts';
import { sheetHead } from './sheet-head';

/** Sheets that somebody would still put together. */
const mostPages = 150;

/** How far the marks lie inside the edge of a page's chart, mm on paper. */
const overlap = 6;

/**
 * A chart to lay over a comparator's screen, or over the part at 1 : 1: the true profile with the limits of its
 * tolerance either side, cross-hairs, bars to check the print by, over as many pages as it takes. Every length in the
 * file is true to the last digit of its coordinates. A PDF, one character a byte.
 */
export function overlayChart(
  job: Job,
  plan: Plan,
  target: MeasuringTarget,
  magnification: number,
  fonts: SheetFonts,
): Result<string> {
  const title = `Overlay chart ${magnification} : 1, ${target.name}`;
  const lines = chartLines(target, job.inspection.profile);
  const all = [...lines.profile, ...lines.low, ...lines.high];
  const { orientation, tiling } = (['portrait', 'landscape'] as const)
    .map((way) => {
      const area = chartPageArea({ area: paperArea(job.sheet.page, way) });
      const page = { width: area.right - area.left, height: area.bottom - area.top };
      return { orientation: way, tiling: overlayTiles(all, magnification, page, overlap) };
    })
    .reduce((best, other) => (other.tiling.tiles.length < best.tiling.tiles.length ? other : best));
  if (tiling.tiles.length > mostPages) {
    return failed(
      'overlay-too-large',
      `The overlay chart of ${target.name} at ${magnification} : 1 would take ${tiling.tiles.length} pages`,
      '',
      'Choose a smaller magnification.',
    );
  }
  const paper = newPaper(job.sheet.page, orientation, fonts, sheetHead(job, plan, title));
  const isTiled = tiling.columns * tiling.rows > 1;
  if (isTiled) indexPage(paper, tiling, lines, job);
  for (const [k, tile] of tiling.tiles.entries()) {
    if (isTiled || k > 0) paper.doc.addPage();
    addTile(paper, tile, lines, magnification, isTiled, job);
  }
  return done(finishedPaper(paper));
}

interface ChartLines {
  readonly profile: Region;
  readonly low: Region;
  readonly high: Region;
}

/** The profile and both limits: material grows outwards by a positive deviation. */
function chartLines({ profile, material }: MeasuringTarget, zone: ProfileTolerance): ChartLines {
  const { low, high } = zoneLimits(zone);
  const grown = (by: number) => offsetRegion(profile, material === 'inside' ? by : -by);
  return { profile, low: grown(low), high: grown(high) };
}

function addTile(
  paper: Paper,
  tile: Tile,
  lines: ChartLines,
  magnification: number,
  isTiled: boolean,
  job: Job,
): void {
  const area = chartPageArea(paper);
  const view = viewOf(paper, area, tile.middle, magnification);
  const box = lines.profile.map(contourBox).reduce(boxAround, contourBox([]));
  chartPage(view, area, overlap, isTiled ? tile.name : null, job.output.unit, () => {
    crossHairs(view, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }, job.output.unit);
    drawLines(view, lines, 1);
  });
  const zone = job.inspection.profile;
  const { low, high } = zoneLimits(zone);
  const length = (mm: number) => formatLength(mm, job.output.unit);
  writeText(
    paper,
    `Profile solid; limits dashed at ${length(low)} and ${length(high)} (line profile ${length(zone.width)})`,
    area.left,
    area.bottom + 3.4,
    { size: 7 },
  );
}

/** Lines fine enough for a comparator: 0.1 mm on paper is 1 µm of the part at 100 : 1. */
function drawLines(view: PaperView, { profile, low, high }: ChartLines, weight: number): void {
  strokeRegion(view, profile, { colour: colours.ink, width: 0.1 * weight });
  const limit = { colour: colours.die, width: 0.1 * weight, dash: [2, 1] };
  strokeRegion(view, low, limit);
  strokeRegion(view, high, limit);
}

/** Where each page belongs. */
function indexPage(paper: Paper, { columns, rows, tiles }: Tiling, lines: ChartLines, job: Job): void {
  const area = chartPageArea(paper);
  const box = tiles.map((tile) => tile.box).reduce(boxAround, contourBox([]));
  const scale = Math.min(
    (area.right - area.left - 10) / (box.maxX - box.minX),
    (area.bottom - area.top - 20) / (box.maxY - box.minY),
  );
  const view = viewOf(paper, area, { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }, scale);
  drawLines(view, { profile: lines.profile, low: [], high: [] }, 2);
  for (const [k, tile] of tiles.entries()) {
    const x = view.zero.x + tile.box.minX * scale;
    const y = view.zero.y - tile.box.maxY * scale;
    setStroke(paper, { colour: colours.faint, width: 0.12 });
    paper.doc.rect(x, y, (tile.box.maxX - tile.box.minX) * scale, (tile.box.maxY - tile.box.minY) * scale);
    writeText(paper, `${tile.name}: page ${k + 2}`, x + 1.2, y + 3, { size: 6 });
  }
  writeText(
    paper,
    `${columns} × ${rows} pages, those without a line left out; neighbours overlap, their ringed marks lie on one another. ` +
      `Lengths in ${job.output.unit}.`,
    area.left,
    area.bottom + 3.4,
    { size: 7 },
  );
}
