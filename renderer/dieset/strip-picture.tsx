import type { Contour } from '../../core/geometry/contour';
import { contourBox } from '../../core/geometry/contour-measures';
import { movedContour } from '../../core/geometry/moved-contour';
import type { StripPlan } from '../../core/die/strip-plan';
import { contourToSvg } from '../picture/segment-to-svg';

const steps = [0, 1, 2];

/** Three steps of the strip: stock, blanks, holes and pilots. */
export function StripPicture({ strip }: { strip: StripPlan }) {
  const { layout, outline, holes, pilots } = strip;
  const placed = (contour: Contour) =>
    steps.flatMap((k) =>
      layout.places.map((place) => movedContour(contour, { ...place, x: place.x + k * layout.feed })),
    );
  const blanks = placed(outline);
  const boxes = blanks.map(contourBox);
  const left = Math.min(...boxes.map(({ minX }) => minX)) - layout.bridge;
  const right = Math.max(...boxes.map(({ maxX }) => maxX)) + layout.bridge;
  const { bottom, width } = layout;
  return (
    <svg
      className="strip-picture"
      viewBox={`${left} ${-bottom - width} ${right - left} ${width}`}
      role="img"
      aria-label="Three steps of the strip"
    >
      <g transform="scale(1 -1)">
        <rect className="strip-stock" x={left} y={bottom} width={right - left} height={width} />
        {blanks.map((contour, k) => (
          <path key={k} className="strip-blank" d={contourToSvg(contour)} />
        ))}
        {holes.flatMap(placed).map((contour, k) => (
          <path key={k} className="strip-hole" d={contourToSvg(contour)} />
        ))}
        {steps.flatMap((k) =>
          pilots.map(({ x, y, diameter }, i) => (
            <circle
              key={`${k}/${i}`}
              className="strip-pilot"
              cx={x + k * layout.feed}
              cy={y}
              r={diameter / 2}
            />
          )),
        )}
      </g>
    </svg>
  );
}
