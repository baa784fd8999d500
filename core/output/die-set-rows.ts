import {
  blockByStockSource,
  blockFactorSource,
  leastDieWall,
  openingToEdge,
  sharpOpeningToEdge,
} from '../die/die-rules';
import type { DieSet, ToolSheet } from '../die/die-set';
import { strippingSource } from '../die/stripping-force';
import { leastBridge } from '../die/strip-rules';
import { saySource } from '../die/sourced';
import type { Job } from '../job';
import type { Pair, Plan } from '../plan';
import { downToTenth } from '../rounded-length';

/** One number of the die set: what it is, in which unit, and by which rule. */
export interface DieSetRow {
  readonly group: string;
  readonly label: string;
  readonly value: number;
  readonly kind: 'length' | 'force' | 'angle' | 'share' | 'count';
  readonly rule: string;
}

/** Every number of the die set in reading order, for summary and CSV. */
export function dieSetRows({ dieSet, pairs }: Plan, job: Job): readonly DieSetRow[] {
  return [
    ...pairs.flatMap(fitRows),
    ...dieSet.tools.flatMap((sheet) => [...forceRows(sheet), ...blockRows(sheet), ...punchRows(sheet, job)]),
    ...dieSet.walls.map(({ kind, contourId, width }): DieSetRow => ({
      group: 'Piece',
      label: `${kind} ${contourId}`,
      value: width,
      kind: 'length',
      rule: 'exact distance in the drawing',
    })),
    ...stripRows(dieSet),
    ...oneBlockRows(dieSet),
  ];
}

/** The fits of plates on their punch, and of a plug in its hole. */
function fitRows({ contourId, use, gap, fit, plates }: Pair): readonly DieSetRow[] {
  const rows = (group: string, wanted: number, rule: string, asCut: Pair['fit']): readonly DieSetRow[] => {
    const row = rowOf(group);
    return [
      row(`gap per side ${contourId}`, wanted, 'length', rule),
      ...(asCut ? [row(`least gap as cut ${contourId}`, asCut.least, 'length', 'exact distance')] : []),
    ];
  };
  return [
    ...(use === 'mate' ? rows('Plug and hole', gap, 'typed, or the middle of ISO 286-1 limits', fit) : []),
    ...plates.flatMap(({ member, gap: own, reason, fit: asCut }) =>
      rows(member.part === 'stripper' ? 'Stripper' : 'Punch retainer', own, reason, asCut),
    ),
  ];
}

const shearForm = 'F = L t τ (Groover, chapter 20)';
const tensileForm = 'F = 0.7 t L UTS (Kalpakjian & Schmid, eq. 16.1)';

function forceRows({ tool, cuts, force }: ToolSheet): readonly DieSetRow[] {
  const row = rowOf(tool.name);
  return [
    ...cuts.flatMap((cut) => [
      row(`length of cut ${cut.contourId}`, cut.length, 'length', 'exact'),
      ...(cut.byShear === null
        ? []
        : [row(`force ${cut.contourId} by shear strength`, cut.byShear, 'force', shearForm)]),
      ...(cut.byTensile === null
        ? []
        : [row(`force ${cut.contourId} by tensile strength`, cut.byTensile, 'force', tensileForm)]),
    ]),
    ...(force
      ? [
          row('force, sharp and flat', force.cutting, 'force', 'sum of the cuts'),
          row(
            'force with shear on the edge',
            force.sheared,
            'force',
            'greatest length that cuts at one time',
          ),
          row('force with dull edges', force.dull, 'force', 'dull edges add 15 to 30 %: common practice'),
          row('stripping, from', force.strippingFrom, 'force', strippingSource),
          row('stripping, to', force.strippingTo, 'force', strippingSource),
          ...(force.ejecting > 0
            ? [
                row(
                  'knockout',
                  force.ejecting,
                  'force',
                  'as much as strips a hole of its width: common practice',
                ),
              ]
            : []),
          ...[
            { set: force.springs, what: 'stripper springs' },
            { set: force.ejectors, what: 'knockout springs' },
          ].flatMap(({ set, what }) =>
            set
              ? [
                  row(what, set.count, 'count', 'Hooke’s law, typed spring data'),
                  row(`${what}, preload`, set.preload, 'length', 'force over number and rate'),
                  row(`${what}, closed`, set.closedForce, 'force', 'preload and working travel'),
                ]
              : [],
          ),
          row('stroke', force.stroke, 'force', 'dull cut and springs'),
          row('press rating wanted', force.needed, 'force', 'margin 20 to 30 %: common practice'),
          ...(force.centre
            ? [
                row('centre of pressure, x', force.centre.x, 'length', 'centroid of all cut lengths'),
                row('centre of pressure, y', force.centre.y, 'length', 'centroid of all cut lengths'),
              ]
            : []),
        ]
      : []),
  ];
}

/** A straight opening has no land to use up; a low block lets less of a land be used. */
const regrindRule =
  'land of a relief or height above the least, whichever is used up first, over what a regrind takes';

function blockRows({ tool, block }: ToolSheet): readonly DieSetRow[] {
  if (block.openings.length === 0) return [];
  const row = rowOf(`${tool.name}, die block`);
  const edgeRule = block.isSharp ? sharpOpeningToEdge : openingToEdge;
  return [
    row('height', block.height, 'length', 'the job’s'),
    row('least height by force', block.thickness.byForce, 'length', `K ∛F, ${blockFactorSource}`),
    row('least height by stock', block.thickness.byStock, 'length', blockByStockSource),
    row('opening to edge', block.edge, 'length', `${edgeRule.value} × height: ${saySource(edgeRule)}`),
    ...(block.outline
      ? [
          row('length', block.outline.maxX - block.outline.minX, 'length', 'openings and edges'),
          row('width', block.outline.maxY - block.outline.minY, 'length', 'openings and edges'),
        ]
      : []),
    ...(block.wall
      ? [
          row(
            'narrowest wall',
            block.wall.width,
            'length',
            `${leastDieWall.value} t: ${saySource(leastDieWall)}`,
          ),
        ]
      : []),
    row('regrinds left', block.regrinds, 'count', regrindRule),
    row('growth per regrind in the relief', block.growth, 'length', 'g tan α'),
    row('exit wider per side', block.exit, 'length', '(height − land) tan α'),
  ];
}

function punchRows({ tool, punches }: ToolSheet, job: Job): readonly DieSetRow[] {
  return punches.flatMap(({ memberId, narrowest, strength, force }) => {
    const row = rowOf(`${tool.name}, ${memberId}`);
    return [
      ...(narrowest ? [row('narrowest place', narrowest.width, 'length', 'exact')] : []),
      ...(force === null ? [] : [row('force with dull edge', force, 'force', 'its own cut')]),
      ...(strength
        ? [
            row('slenderness', strength.slenderness, 'count', 'effective length over radius of gyration'),
            row('buckling load', strength.bucklingLoad, 'force', `Euler, ${job.dieSet.punch.end} end`),
            row(
              'longest free length',
              downToTenth(strength.longestLength),
              'length',
              'Euler’s load equal to the force',
            ),
            row('capacity over force', strength.safety, 'count', `limited by ${strength.limit}`),
          ]
        : []),
    ];
  });
}

function stripRows({ strip }: DieSet): readonly DieSetRow[] {
  if (!strip) return [];
  const { layout, leastBridge: least, pilots } = strip;
  const row = rowOf('Strip');
  return [
    row('width', layout.width, 'length', 'exact'),
    row('feed', layout.feed, 'length', 'exact least step'),
    row('bridge', layout.bridge, 'length', `rule ${least.toFixed(3)} mm: ${saySource(leastBridge)}`),
    row('edge', layout.edge, 'length', saySource(leastBridge)),
    row('turned by', layout.places[0]?.turn ?? 0, 'angle', 'searched or typed'),
    row('stock used', layout.used, 'share', 'outline of the blanks over strip'),
    row(
      'pilots',
      pilots.length,
      'count',
      pilots[0]?.where === 'scrap' ? 'in the scrap' : 'in holes of the piece',
    ),
  ];
}

function oneBlockRows({ oneBlocks }: DieSet): readonly DieSetRow[] {
  return oneBlocks.flatMap(({ contourId, kerf, height, clearance, solved, least, greatest }) => {
    const row = rowOf(`One block ${contourId}`);
    return [
      row('kerf', kerf, 'length', 'wire and two spark gaps'),
      row('block height', height, 'length', 'the job’s'),
      row('tilt', solved.tilt, 'angle', 'h sin θ + c cos θ = K'),
      row('wire centre from the contour', solved.halfKerf, 'length', 'K / (2 cos θ)'),
      row('drift from face to face', solved.drift, 'length', 'h tan θ'),
      row('clearance wanted', clearance, 'length', 'the job’s'),
      row('clearance proved, least', least, 'length', 'true distance of the edges'),
      row('clearance proved, greatest', greatest, 'length', 'true distance of the edges'),
      row('change for 0.01°', solved.perHundredthDegree, 'length', 'dc/dθ'),
      row('change for 0.01 mm of gap', solved.perHundredthGap, 'length', 'dc/dK'),
    ];
  });
}

const rowOf =
  (group: string) =>
  (label: string, value: number, kind: DieSetRow['kind'], rule: string): DieSetRow => ({
    group,
    label,
    value,
    kind,
    rule,
  });
