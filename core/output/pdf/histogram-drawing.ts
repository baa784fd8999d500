import { histogram } from '../../inspect/histogram';
import { zoneLimits, type ProfileTolerance } from '../../inspect/profile-tolerance';
import { formatLengthNumber, type DisplayUnit } from '../../units';
import { colours } from './member-drawing';
import { writeText, type Area, type Paper } from './paper';
import { setStroke } from './paper-view';

/** How the deviations are spread, with the limits of the profile zone. */
export function histogramDrawing(
  paper: Paper,
  whole: Area,
  deviations: readonly number[],
  zone: ProfileTolerance,
  unit: DisplayUnit,
): void {
  const { doc } = paper;
  const { from, step, counts } = histogram(deviations);
  const area: Area = {
    left: whole.left + 8,
    right: whole.right - 2,
    top: whole.top + 4,
    bottom: whole.bottom - 6,
  };
  const limits = zoneLimits(zone);
  const low = Math.min(from, limits.low);
  const high = Math.max(from + counts.length * step, limits.high);
  const most = Math.max(1, ...counts);
  const atX = (value: number) => area.left + ((area.right - area.left) * (value - low)) / (high - low);
  const height = area.bottom - area.top;
  setStroke(paper, { colour: '#4d4d4d', width: 0.15 });
  counts.forEach((count, k) => {
    if (count === 0) return;
    doc.setFillColor('#c9d6de');
    const left = atX(from + k * step);
    const tall = (height * count) / most;
    doc.rect(left, area.bottom - tall, atX(from + (k + 1) * step) - left, tall, 'FD');
    writeText(paper, String(count), (left + atX(from + (k + 1) * step)) / 2, area.bottom - tall - 0.6, {
      size: 5.5,
      align: 'center',
    });
  });
  doc.line(area.left, area.bottom, area.right, area.bottom);
  for (const [value, dash] of [
    [0, []],
    [limits.low, [1.5, 1]],
    [limits.high, [1.5, 1]],
  ] as const) {
    setStroke(paper, { colour: value === 0 ? colours.ink : colours.within, width: 0.3, dash: [...dash] });
    doc.line(atX(value), area.top - 1, atX(value), area.bottom);
    writeText(paper, formatLengthNumber(value, unit), atX(value), area.bottom + 2.8, {
      size: 6,
      align: 'center',
    });
  }
  writeText(paper, `deviation, ${unit}; limits dashed`, (area.left + area.right) / 2, whole.bottom - 0.6, {
    size: 6.5,
    align: 'center',
  });
}
