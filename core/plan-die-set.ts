import { memberFit } from './check/member-fit';
import type { DieSetSettings } from './die-set-settings';
import { blockSheet, type WallFinder } from './die/block-sheet';
import { cutForce } from './die/cut-force';
import { widthsLookedAt } from './die/die-rules';
import type { DieSet, ProvedOneBlock, ToolSheet } from './die/die-set';
import { forceSheet } from './die/force-sheet';
import { oneBlock } from './die/one-block';
import { punchSheet } from './die/punch-sheet';
import type { LandAndRelief } from './die/regrinds';
import { sectionPlan, type SectionPlan } from './die/section-plan';
import type { StockMaterial } from './die/stock-materials';
import { stockWalls, type PieceContour } from './die/stock-walls';
import type { StripPlan } from './die/strip-plan';
import { toolsOf, type Tool, type ToolCut } from './die/tool';
import { toolParts } from './die/tool-parts';
import type { Contour, Region } from './geometry/contour';
import { leastWidth } from './geometry/least-width';
import type { Width } from './geometry/width';
import type { MemberRole, Pair } from './plan';
import type { Problem } from './problem';
import { rememberMany } from './remember';

export interface DieSetQuery {
  readonly settings: DieSetSettings;
  readonly thickness: number;
  readonly material: StockMaterial | undefined;
  readonly clearance: number;
  /** What is blanked and pierced: as drawn, and where it is cut in the tool. */
  readonly piece: readonly PieceContour[];
  readonly placed: readonly PieceContour[];
  readonly pairs: readonly Pair[];
  readonly reach: Readonly<Record<MemberRole, number>>;
  /** Heights of the blocks, mm. */
  readonly heights: Readonly<Record<MemberRole, number>>;
  /** Width of the finishing cut square to the wire, mm. */
  readonly kerf: number;
  readonly relief: LandAndRelief;
  /** Taken off the die's face each time, mm. */
  readonly perGrind: number;
  readonly strip: StripPlan | null;
}

export interface PlannedDieSet {
  readonly dieSet: DieSet;
  /** Why a contour can't be cut out of one block. */
  readonly problems: readonly { readonly contourId: string; readonly problem: Problem }[];
}

export type DieSetPlanner = (query: DieSetQuery) => PlannedDieSet;

/** Works out a die set; remembers the narrow places of contours, which take longest and rarely change. */
export function createDieSetPlanner(): DieSetPlanner {
  const narrowest = rememberMany(
    (region: Region, within: number) => leastWidth(region, 'inside', within),
    widthsRemembered,
  );
  const widths = new WeakMap<Contour, { readonly within: number; readonly width: Width | null }>();
  const widthOf = (contour: Contour, within: number): Width | null => {
    const known = widths.get(contour);
    if (known?.within === within) return known.width;
    const width = leastWidth([contour], 'inside', within);
    widths.set(contour, { within, width });
    return width;
  };
  const walls = rememberMany(
    (openings: Region, within: number) => leastWidth(openings, 'outside', within),
    widthsRemembered,
  );
  return (query) => planDieSet(query, { narrowest, widthOf, walls });
}

const widthsRemembered = 400;

interface Finders {
  readonly narrowest: (region: Region, within: number) => Width | null;
  readonly widthOf: (contour: Contour, within: number) => Width | null;
  readonly walls: WallFinder;
}

function planDieSet(query: DieSetQuery, finders: Finders): PlannedDieSet {
  const { settings, piece } = query;
  const tools = toolsOf(settings.arrangement, cutsOf(query));
  const sheets = tools.map((tool) => toolSheet(tool, query, finders));
  const blocks = settings.oneBlock ? piece.map((contour) => provedOneBlock(contour, query)) : [];
  return {
    dieSet: {
      arrangement: settings.arrangement,
      tools: sheets,
      walls: stockWalls(piece, widthsLookedAt * query.thickness, finders.widthOf),
      strip: settings.strip.up === 'none' ? null : query.strip,
      sections: sheets.flatMap((sheet) => sectionsOf(sheet, query)),
      oneBlocks: blocks.flatMap((block) => ('problem' in block ? [] : [block])),
    },
    problems: blocks.flatMap((block) => ('problem' in block ? [block] : [])),
  };
}

function cutsOf({ placed, pairs }: DieSetQuery): readonly ToolCut[] {
  const byId = new Map(pairs.map((pair) => [pair.contourId, pair]));
  return placed.flatMap(({ contourId, use, contour }) => {
    const pair = byId.get(contourId);
    if (!pair) return [];
    const plates = pair.plates.flatMap(({ member: { id, part, designed } }) =>
      part === 'stripper' || part === 'retainer' ? [{ id, plate: part, designed }] : [],
    );
    return [{ contourId, use, contour, die: pair.die, punch: pair.punch, plates }];
  });
}

function toolSheet(tool: Tool, query: DieSetQuery, finders: Finders): ToolSheet {
  const { settings, thickness, material } = query;
  const cuts = tool.cuts.map(({ contourId, use, contour }) =>
    cutForce({ contourId, use, contour, thickness, material, by: settings.force.by }),
  );
  const force = forceSheet(tool, cuts, thickness, { ...settings, ...settings.force });
  const parts = toolParts(settings.arrangement, tool);
  const openings = parts.find(({ id }) => id === 'die')?.region ?? [];
  const bodies = new Map(parts.map(({ memberIds, region }) => [memberIds[0], region]));
  const narrowest = (region: Region) => finders.narrowest(region, widthsLookedAt * thickness);
  return {
    tool,
    parts,
    cuts,
    force,
    block: blockSheet(
      {
        toolId: tool.id,
        openings,
        height: query.heights.die,
        force: force?.dull ?? null,
        length: cuts.reduce((sum, { length }) => sum + length, 0),
        thickness,
        relief: query.relief,
        perGrind: query.perGrind,
      },
      finders.walls,
    ),
    punches: tool.cuts.flatMap(({ punch }, k) => {
      const region = bodies.get(punch.id);
      const cut = cuts[k];
      if (!region || !cut) return [];
      return [punchSheet(punch.id, region, cut, settings.force.dull, settings.punch, narrowest)];
    }),
  };
}

function sectionsOf({ tool, block }: ToolSheet, query: DieSetQuery): readonly SectionPlan[] {
  const { of, stock } = query.settings.sections;
  return tool.cuts.flatMap(({ die, punch }) =>
    ([die, punch] as const).flatMap((member) => {
      const role = member === die ? 'die' : 'punch';
      if (of !== 'both' && of !== role) return [];
      return [
        sectionPlan({
          memberId: member.id,
          role,
          designed: member.designed,
          others: block.openings.filter((other) => !member.designed.includes(other)),
          block: block.outline,
          reach: query.reach[role],
          stock,
        }),
      ];
    }),
  );
}

function provedOneBlock(
  { contourId, use, contour }: PieceContour,
  { kerf, heights, clearance }: DieSetQuery,
): ProvedOneBlock | { contourId: string; problem: Problem } {
  const made = oneBlock({ contourId, use, contour, kerf, height: heights.die, clearance });
  if (!made.ok) return { contourId, problem: made.problem };
  // The punch's edge comes down into the plane of the die's edge: their distance there is the true clearance.
  const { 'die edge': narrow, 'punch edge': wide } = made.value.contours;
  const fit = memberFit(wide.punch, narrow.die);
  return { ...made.value, least: fit?.least ?? Number.NaN, greatest: fit?.greatest ?? Number.NaN };
}
