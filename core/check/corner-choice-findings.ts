import { cornerPlaces } from '../die/corner-places';
import { cornerNear } from '../die/corner-radii';
import type { CornerException } from '../die/corner-rules';
import type { Finding } from '../finding';
import { findingOf } from '../finding-of';
import type { Contour } from '../geometry/contour';

/** Choices for corners that the drawing does not have (any more): nothing follows from them, and nobody would see it. */
export function cornerChoiceFindings(
  exceptions: readonly CornerException[],
  contours: readonly { readonly id: string; readonly contour: Contour }[],
): readonly Finding[] {
  const places = new Map(
    contours
      .filter(({ id }) => exceptions.some(({ contourId }) => contourId === id))
      .map(({ id, contour }) => [id, cornerPlaces(contour)]),
  );
  return exceptions.flatMap((exception) => {
    const { contourId, x, y } = exception;
    const own = places.get(contourId);
    if (own && cornerNear(own, exception)) return [];
    return [
      findingOf({
        code: 'corner-choice',
        weight: 'decide',
        title: 'A choice for a corner that is not there',
        message: own
          ? `The job has a choice for a corner of contour ${contourId} here, but the contour has no corner at this place.`
          : `The job has a choice for a corner of contour ${contourId}, which the drawing does not have.`,
        ...(own ? { contourId, place: { x, y, reach: 2 } } : {}),
        cures: [{ kind: 'forget-corner', contourId, at: { x, y }, say: 'Take the choice out of the job.' }],
      }),
    ];
  });
}
