import { memo } from 'react';
import type { Finding } from '../../core/finding';
import type { Linework } from '../../core/drawing/linework';
import type { Plan } from '../../core/plan';
import { segmentsOfLines } from '../picture/lines-index';
import { planIndex } from '../picture/plan-index';
import { placeOfFinding, remaindersOf } from '../picture/place-of-finding';
import { contourToSvg, segmentToSvg } from '../picture/segment-to-svg';
import { useAppState } from '../state/use-app';

/** A small picture of the place: the contours around it and what the wire leaves there. */
export const PlacePicture = memo(function PlacePicture({ finding }: { finding: Finding }) {
  const plan = useAppState((state) => state.made?.plan ?? null);
  const lines = useAppState((state) => state.survey?.lines ?? none);
  const place = plan && placeOfFinding(plan, finding);
  if (!place) return <span className="place place-none" aria-hidden="true" />;
  const half = Math.max(place.reach, 0.02);
  // Flipped by the transform below: the drawing's y grows upwards.
  const viewBox = `${place.x - half} ${-place.y - half} ${2 * half} ${2 * half}`;
  return (
    <svg className="place" viewBox={viewBox} aria-hidden="true">
      <g transform="scale(1 -1)">
        {remaindersOf(plan, finding.key).map(({ outline }, index) => (
          <path key={index} className="place-remainder" d={contourToSvg(outline)} />
        ))}
        <path className="place-line place-drawn" d={drawnAround(lines, place, half)} />
        {linesAround(plan, place, half).map(({ role, path }) => (
          <path key={role} className={`place-line place-${role}`} d={path} />
        ))}
      </g>
    </svg>
  );
});

const none: readonly Linework[] = [];

/** What is drawn there, edge or not. */
const drawnAround = (lines: readonly Linework[], place: { x: number; y: number }, half: number): string =>
  segmentsOfLines(lines, boxAround(place, half))
    .map(({ from, to }) => segmentToSvg(from, to))
    .join('');

const boxAround = ({ x, y }: { x: number; y: number }, half: number) => ({
  minX: x - half,
  minY: y - half,
  maxX: x + half,
  maxY: y + half,
});

/** The segments near the place only: a part of ten thousand segments has a thousand small pictures. */
function linesAround(plan: Plan, place: { x: number; y: number }, half: number) {
  const segments = planIndex(plan).segmentsIn(boxAround(place, half));
  return (['die', 'punch'] as const).flatMap((role) => {
    const path = segments
      .filter(({ member }) => member.role === role)
      .map(({ from, to }) => segmentToSvg(from, to))
      .join('');
    return path === '' ? [] : [{ role, path }];
  });
}
