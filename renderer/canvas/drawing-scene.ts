import type { Linework } from '../../core/drawing/linework';
import { runsOf } from '../../core/drawing/linework';
import type { Drawing } from '../../core/drawing/drawing';
import type { DrawingSurvey } from '../../core/drawing/survey-drawing';
import { chainChunks, contourChunks, runChunks, type PathChunk } from './path-chunk';

/** All that is drawn, as it came: ready to be stroked at any zoom. */
export interface LinesScene {
  readonly survey: DrawingSurvey;
  readonly lines: readonly (Pick<Linework, 'layer' | 'colour' | 'hidden' | 'isFilling'> & {
    readonly chunks: readonly PathChunk[];
  })[];
}

export const buildLines = (survey: DrawingSurvey): LinesScene => ({
  survey,
  lines: survey.lines.map((lines) => ({
    layer: lines.layer,
    colour: lines.colour,
    hidden: lines.hidden,
    isFilling: lines.isFilling,
    chunks: runChunks(runsOf(lines)),
  })),
});

/** The drawing's contours, each by itself, so that one can be picked out. */
export interface ContoursScene {
  readonly drawing: Drawing;
  readonly taken: readonly PathChunk[];
  readonly leftOut: readonly PathChunk[];
}

export const buildContours = (drawing: Drawing): ContoursScene => ({
  drawing,
  taken: contourChunks(drawing.contours.map(({ contour }) => contour)),
  leftOut: contourChunks(drawing.leftOut.map(({ contour }) => contour)),
});

/** One contour by its id; none where there is no such. */
export function chunksOfContour({ contours, leftOut }: Drawing, id: string): readonly PathChunk[] {
  const found = [...contours, ...leftOut].find((contour) => contour.id === id);
  const first = found?.contour[0];
  return found && first ? chainChunks([[...found.contour, first]]) : [];
}
