import type { Box, Region } from '../geometry/contour';
import { leastWidth } from '../geometry/least-width';
import type { Width } from '../geometry/width';
import {
  blockAround,
  dieBlockThickness,
  edgeDistance,
  hasSharpCorners,
  type BlockThickness,
} from './die-block-size';
import { leastDieWall, widthsLookedAt } from './die-rules';
import { exitEnlargement, growthPerGrind, regrindsLeft, type LandAndRelief } from './regrinds';
import { screwPlaces, type ScrewPlace } from './screw-places';
import type { Tool } from './tool';

export interface BlockQuery {
  readonly toolId: Tool['id'];
  readonly openings: Region;
  /** Height that the block is cut from, mm. */
  readonly height: number;
  /** Force of the cut with dull edges, N, and its length, mm; null where the stock has no strength. */
  readonly force: number | null;
  readonly length: number;
  readonly thickness: number;
  readonly relief: LandAndRelief;
  readonly perGrind: number;
}

/** The die block: how thick and how large it has to be, where its screws go, and how long it lasts. mm. */
export interface BlockSheet {
  readonly toolId: Tool['id'];
  readonly openings: Region;
  readonly height: number;
  /** Straight land below the edge, mm; the whole height where there is no relief. */
  readonly land: number;
  readonly thickness: BlockThickness;
  /** From the openings to the edge, by the block's height; larger where corners are sharp. */
  readonly edge: number;
  readonly isSharp: boolean;
  readonly outline: Box | null;
  readonly screws: readonly ScrewPlace[];
  /** Narrowest wall between openings, or tongue within one, where it is thin enough to matter. */
  readonly wall: Width | null;
  readonly leastWall: number;
  readonly regrinds: number;
  readonly perGrind: number;
  readonly growth: number;
  readonly exit: number;
}

export function blockSheet(query: BlockQuery, wallOf: WallFinder = thinWall): BlockSheet {
  const { openings, height, relief, perGrind } = query;
  const thickness = dieBlockThickness(query.force ?? 0, query.length, query.thickness);
  const edge = edgeDistance(openings, height);
  const outline = blockAround(openings, edge);
  const leastWall = leastDieWall.value * query.thickness;
  return {
    toolId: query.toolId,
    openings,
    height,
    land: Math.min(relief.land, height),
    thickness,
    edge,
    isSharp: hasSharpCorners(openings),
    outline,
    screws: outline ? screwPlaces(outline, openings, height) : [],
    wall: wallOf(openings, widthsLookedAt * query.thickness),
    leastWall,
    regrinds: regrindsLeft(relief, perGrind, height, Math.min(height, thickness.least)),
    perGrind,
    growth: growthPerGrind(perGrind, relief.relief),
    exit: exitEnlargement(height, relief),
  };
}

export type WallFinder = (openings: Region, within: number) => Width | null;

const thinWall: WallFinder = (openings, within) => leastWidth(openings, 'outside', within);
