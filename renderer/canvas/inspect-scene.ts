import type { Region } from '../../core/geometry/contour';
import type { Band } from '../../core/inspect/band';
import type { ChangedPlace } from '../../core/inspect/changed-places';
import type { ClearanceMap } from '../../core/inspect/clearance-map';
import { gapPicture, type GapPicture } from '../../core/inspect/gap-picture';
import type { PairClearance } from '../../core/inspect/pair-clearance';
import type { Pair } from '../../core/plan';
import type { Revision } from '../../core/revision';
import { chainChunks, contourChunks, regionChunk, type PathChunk } from './path-chunk';

/** A clearance map made ready to be drawn at any zoom. */
export interface MapScene {
  readonly die: readonly PathChunk[];
  readonly designed: readonly PathChunk[];
  readonly stretches: readonly { readonly band: Band; readonly chunks: readonly PathChunk[] }[];
}

/** The same of a pair as cut, with what a lamp would show. */
export interface ClearanceScene extends MapScene {
  readonly pair: PairClearance;
  /** Opening and punch, each to be filled even-odd: what the punch leaves of the opening is the true gap. */
  readonly opening: PathChunk | null;
  readonly body: PathChunk | null;
  readonly light: GapPicture;
}

export function buildClearance(pair: PairClearance, designed: Pair, gapTimes: number): ClearanceScene {
  return {
    ...buildMap(pair.map, pair.die, [...designed.die.designed, ...designed.punch.designed]),
    pair,
    opening: regionChunk(pair.die),
    body: regionChunk(pair.punch),
    light: gapPicture(pair.map, pair.punch, gapTimes),
  };
}

export function buildMap(map: ClearanceMap, die: Region, designed: Region): MapScene {
  return {
    die: contourChunks(die),
    designed: contourChunks(designed),
    // What matters most is drawn last, over the rest.
    stretches: [...map.stretches]
      .sort((a, b) => order[a.band] - order[b.band])
      .map(({ band, chain }) => ({ band, chunks: chainChunks([chain]) })),
  };
}

const order: Readonly<Record<Band, number>> = { within: 0, wide: 1, tight: 2, contact: 3 };

/** A revision made ready to be drawn. */
export interface RevisionScene {
  readonly older: readonly PathChunk[];
  readonly newer: readonly PathChunk[];
  readonly places: readonly { readonly place: ChangedPlace; readonly chunk: PathChunk | null }[];
}

export const buildRevision = ({ older, newer, places }: Revision): RevisionScene => ({
  older: chunksOf(older),
  newer: chunksOf(newer),
  places: places.map((place) => ({ place, chunk: regionChunk(place.region) })),
});

const chunksOf = (region: Region): readonly PathChunk[] => contourChunks(region);
