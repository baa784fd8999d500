import { reliefWalls } from './check/relief-walls';
import { technologyFindings } from './check/technology-findings';
import { blockFindings } from './check/block-findings';
import type { DieSet } from './die/die-set';
import type { ChosenClearance } from './die/choose-clearance';
import { taperAngle } from './die/relief-rules';
import type { Drawing } from './drawing/drawing';
import type { Finding, FindingWeight } from './finding';
import { chainLength } from './geometry/contour-measures';
import { byPart, heightOf, partsOf, passesOf, type Job } from './job';
import { oneBlockLean } from './one-block-wire';
import type { PairPlan } from './plan-pair';
import type { Member, Plan, Summary } from './plan';
import type { BlockProofs } from './prove-blocks';
import { reachOf } from './wire/pass-offsets';
import { levelDistance } from './wire/plan-relief';
import type { BlockGroup } from './wire/block-groups';
import { planBlocks } from './wire/plan-blocks';
import { membersOf } from './wire/members-of';

/** Gathers the stages' results: findings worst first and what is still open. Nothing is proved yet, so not released. */
export function asPlan(
  job: Job,
  drawing: Drawing,
  { choice, notes }: ChosenClearance,
  jobFindings: readonly Finding[],
  planned: readonly PairPlan[],
  groups: readonly BlockGroup[],
  dieSet: DieSet,
): Plan {
  const pairs = planned.map(({ pair }) => pair);
  const members = membersOf({ pairs });
  const blocks = planBlocks(groups, members, job.setup.sequence);
  const findings = worstFirst([
    ...drawing.findings,
    ...jobFindings,
    ...notes,
    ...technologyFindings({
      technology: job.technology,
      byTable: job.passRule === 'table',
      wire: job.wire.diameter,
      heights: partsOf(job).map((part) => ({ part, height: heightOf(job, part) })),
    }),
    ...planned.flatMap((plan) => plan.findings),
    ...blockFindings(blocks, members),
    ...reliefWalls(blocks, members),
  ]);
  const open = openFindings(findings, job);
  const summary: Summary = {
    contours: drawing.contours.length,
    members: members.length,
    partSize: { width: drawing.box.maxX - drawing.box.minX, height: drawing.box.maxY - drawing.box.minY },
    cutLength: members
      .flatMap(({ cuts }) => cuts.flatMap(({ passes }) => passes))
      .flatMap(({ main, tabs }) => [...main, ...tabs])
      .reduce((sum, run) => sum + chainLength(run.cut), 0),
    largestGouge: 0,
    largestRemainder: 0,
    open,
  };
  return {
    drawing,
    clearance: choice,
    reach: byPart((part) => {
      const square = reachOf(job.wire.diameter, passesOf(job, part));
      if (part !== 'die') return square;
      const lean = job.dieSet.oneBlock ? oneBlockLean(job, choice.perSide) : null;
      return lean?.ok ? lean.value.halfKerf : levelDistance(square, taperAngle(job.relief));
    }),
    pairs,
    dieSet,
    blocks,
    findings,
    proved: false,
    released: false,
    summary,
  };
}

/** The plan with the verdicts of the proofs: it is released when all passed and no finding is open. */
export function withProofs(plan: Plan, job: Job, { proofOf, findings: found }: BlockProofs): Plan {
  const proved = (member: Member): Member => ({ ...member, proof: proofOf(member) });
  const pairs = plan.pairs.map((pair) => ({
    ...pair,
    die: proved(pair.die),
    punch: proved(pair.punch),
    plates: pair.plates.map((plate) => ({ ...plate, member: proved(plate.member) })),
  }));
  const proofs = membersOf({ pairs }).map(({ proof }) => proof);
  const findings = worstFirst([...plan.findings, ...found]);
  const open = openFindings(findings, job);
  return {
    ...plan,
    pairs,
    findings,
    proved: true,
    released:
      open.stop === 0 && open.decide === 0 && proofs.length > 0 && proofs.every(({ passed }) => passed),
    summary: {
      ...plan.summary,
      largestGouge: Math.max(0, ...proofs.map(({ gouge }) => gouge)),
      largestRemainder: Math.max(0, ...proofs.map(({ remainder }) => remainder)),
      open,
    },
  };
}

const order: Readonly<Record<FindingWeight, number>> = { stop: 0, decide: 1, note: 2 };

/** By weight; within a weight as the stages found them. */
const worstFirst = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort((a, b) => order[a.weight] - order[b.weight]);

/** A person's reason settles what asks for a decision; it cannot settle a stop. */
export const isOpen = (finding: Finding, job: Job): boolean =>
  finding.weight === 'stop' || (finding.weight === 'decide' && job.settled[finding.key] === undefined);

function openFindings(findings: readonly Finding[], job: Job): Summary['open'] {
  const count = (weight: FindingWeight) =>
    findings.filter((f) => f.weight === weight && isOpen(f, job)).length;
  return {
    stop: count('stop'),
    decide: count('decide'),
    note: findings.filter((f) => f.weight === 'note').length,
  };
}
