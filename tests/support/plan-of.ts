import type { Chain, Contour, Point } from '../../core/geometry/contour';
import { contourLength, reversedChain } from '../../core/geometry/contour-measures';
import { neutralStyle } from '../../core/neutral-style';
import { newJob, type Job } from '../../core/job';
import { emptyDieSet } from './empty-die-set';
import type { Finding } from '../../core/finding';
import type { CutRun, Member, PassPath, PassRuns, Plan, Threading } from '../../core/plan';
import { jobPass } from './job-pass';
import { programmedRun } from '../../core/wire/programmed-run';
import { ownBlock } from './own-blocks';

/** Bulge of a quarter turn, tan(90° / 4): DXF reference, LWPOLYLINE group 42. */
const quarter = Math.tan(Math.PI / 8);

export interface PlanParts {
  readonly width: number;
  readonly height: number;
  readonly radius: number;
  readonly clearance: number;
  readonly job: Job;
  readonly findings?: readonly Finding[];
  readonly released?: boolean;
}

/**
 * The plan of one rounded rectangle that is blanked, built from closed formulas alone (every offset of it is a
 * rounded rectangle), so that writers can be tested without the stages that make plans. Centre at the origin, start
 * holes at the die's centre and below the punch, tab in the middle of the lower edge.
 */
export function planOf(parts: PlanParts): Plan {
  const { width, height, job, clearance } = parts;
  const findings = parts.findings ?? [];
  const die = memberOf(parts, 'die', 0);
  const punch = memberOf(parts, 'punch', -clearance);
  const reach = job.wire.diameter / 2 + (job.passes.at(-1)?.sparkGap ?? 0);
  const box = { minX: -width / 2, minY: -height / 2, maxX: width / 2, maxY: height / 2 };
  const drawn = {
    id: 'c1',
    contour: roundedRectangle(parts, 0),
    layer: '0',
    colour: 7,
    depth: 0,
    parentId: null,
  };
  const count = (weight: Finding['weight']) => findings.filter((finding) => finding.weight === weight).length;
  return {
    drawing: {
      format: 'dxf',
      unit: 'mm',
      contours: [{ ...drawn, largestGap: 0, fitError: 0 }],
      unused: [],
      box,
      largestFitError: 0,
      leftOut: [],
      repairs: [],
      dimensions: [],
      findings: [],
    },
    reach: { die: reach, punch: reach, stripper: reach, retainer: reach },
    clearance: { perSide: clearance, reason: 'given', effect: 'an even edge' },
    pairs: [
      {
        contourId: 'c1',
        use: 'blank',
        gap: clearance,
        sizeShift: 0,
        isOneBlock: false,
        die,
        punch,
        plates: [],
        fit: null,
      },
    ],
    dieSet: emptyDieSet,
    blocks: [die, punch].map(ownBlock),
    findings,
    proved: true,
    released: parts.released ?? true,
    summary: {
      contours: 1,
      members: 2,
      partSize: { width, height },
      cutLength: [die, punch]
        .flatMap((member) => member.cuts.flatMap((cut) => cut.passes))
        .reduce((sum, pass) => sum + contourLength(pass.loop), 0),
      largestGouge: 0,
      largestRemainder: 0,
      open: { stop: count('stop'), decide: count('decide'), note: count('note') },
    },
  };
}

function memberOf(parts: PlanParts, role: Member['role'], designedOffset: number): Member {
  const designed = roundedRectangle(parts, designedOffset);
  const outward = role === 'die' ? -1 : 1;
  const start = {
    x: 0,
    y: role === 'die' ? 0 : -parts.height / 2 - 5,
    diameter: 3,
    kind: 'drilled',
  } as const;
  const waste = role === 'die' ? 'inside' : 'outside';
  const wireRadius = parts.job.wire.diameter / 2;
  const passes = parts.job.passes.map((pass, index, all) => {
    const offset = wireRadius + pass.sparkGap + pass.stockLeft;
    const loop = roundedRectangle(parts, designedOffset + outward * offset);
    const feed = pass.feed ?? pass.rate / parts.job.blocks[role];
    return passOf({ index, count: all.length, offset, feed, loop, designed, start, role });
  });
  return {
    id: `blank-1-${role}`,
    role,
    part: role,
    contourId: 'c1',
    designed: [designed],
    asCut: [designed],
    remainders: [],
    cuts: [
      {
        id: `blank-1-${role}-1`,
        starts: [start],
        waste,
        tabs: [],
        slug: 'kept',
        passes,
        threadings: [mainThenTabs(passes)],
      },
    ],
    proof: {
      passed: true,
      gouge: 0,
      gougeAt: null,
      remainder: 0,
      remainderAt: null,
      chord: 0.0001,
      allowed: 0.0005,
    },
  };
}

function passOf(given: {
  index: number;
  count: number;
  offset: number;
  feed: number;
  loop: Contour;
  designed: Contour;
  start: Point;
  role: Member['role'];
}): PassPath {
  const { index, offset, feed, loop, designed } = given;
  const contour = runsOn(designed, given);
  const programmed = (runs: readonly CutRun[], forwards: boolean): readonly CutRun[] =>
    runs.flatMap((run) => programmedRun(run, designed, forwards, offset, 0) ?? []);
  const main = programmed(contour.main, index % 2 === 0);
  const tabs = programmed(contour.tabs, tabForwards(given));
  return {
    pass: index,
    offset,
    feed,
    loop,
    ...runsOn(loop, given),
    // Some sizes have no room to begin early.
    contour: main.length > 0 && tabs.length > 0 ? { main, tabs } : null,
  };
}

/** Every pass but the tab, then, after a stop, the tab. */
function mainThenTabs(passes: readonly PassPath[]): Threading {
  const runs = (part: 'main' | 'tabs') =>
    passes.map(({ pass }, k) => ({
      pass,
      part,
      index: 0,
      stop: part === 'tabs' && k === 0 ? 'secure the piece before the tab is cut' : null,
    }));
  return { start: 0, attended: true, runs: [...runs('main'), ...runs('tabs')], after: null };
}

const tabForwards = ({ index, count }: { index: number; count: number }): boolean =>
  (count + index) % 2 === 1;

/** The passes go to and fro, the tab's too: each starts on the side of the tab where the one before ended. */
function runsOn(
  loop: Contour,
  given: { index: number; count: number; start: Point; role: Member['role'] },
): PassRuns {
  const { index, start, role } = given;
  // Travelled counter-clockwise the wire is left inside a die opening and right outside a punch.
  const run = (chain: Chain, forwards: boolean): CutRun => {
    const cut = forwards ? chain : reversedChain(chain);
    return {
      leadIn: [plain(start), ...cut.slice(0, 1).map(plain)],
      cut,
      leadOut: [...cut.slice(-1), plain(start)],
      wireSide: forwards === (role === 'die') ? 'left' : 'right',
    };
  };
  return {
    main: [run(allButTab(loop), index % 2 === 0)],
    tabs: [run(tabOf(loop), tabForwards(given))],
  };
}

const plain = ({ x, y }: { x: number; y: number }) => ({ x, y, bulge: 0 });

/** The ring opened at its last segment, the tab. */
const allButTab = (loop: Contour): Chain =>
  loop.map((vertex, index) => (index === loop.length - 1 ? plain(vertex) : vertex));

const tabOf = (loop: Contour): Chain => [...loop.slice(-1), ...loop.slice(0, 1)].map(plain);

/** Half the length of the tab in the middle of the lower edge. */
const halfTab = 1;

/** Counter-clockwise from the tab's right end, grown outward by `offset`. */
export function roundedRectangle(
  size: { readonly width: number; readonly height: number; readonly radius: number },
  offset: number,
): Contour {
  const [w, h, r] = [size.width / 2 + offset, size.height / 2 + offset, size.radius + offset];
  return [
    { x: halfTab, y: -h, bulge: 0 },
    { x: w - r, y: -h, bulge: quarter },
    { x: w, y: -h + r, bulge: 0 },
    { x: w, y: h - r, bulge: quarter },
    { x: w - r, y: h, bulge: 0 },
    { x: -w + r, y: h, bulge: quarter },
    { x: -w, y: h - r, bulge: 0 },
    { x: -w, y: -h + r, bulge: quarter },
    { x: -w + r, y: -h, bulge: 0 },
    { x: -halfTab, y: -h, bulge: 0 },
  ];
}

/**
 * Worked example [D]: a blank of 20 × 10 mm, corner radius 0.5, stock 1 mm, clearance 0.075; wire 0.25, spark gap
 * 0.025, one pass. With more passes the later ones are skims of the given stock.
 */
export function exampleParts(
  change: { unit?: Job['output']['unit']; program?: Job['output']['program'] } = {},
) {
  const job: Job = {
    ...newJob('example.dxf', ''),
    stock: { material: 'cold-rolled-half-hard', thickness: 1 },
    passes: [jobPass({ sparkGap: 0.025, feed: 4 })],
    output: { unit: change.unit ?? 'mm', program: change.program ?? 'wire centre', style: neutralStyle },
  };
  return { width: 20, height: 10, radius: 0.5, clearance: 0.075, job } as const;
}
