import { readFileSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { tolerance } from '../../../core/geometry/tolerance';
import type { Job } from '../../../core/job';
import { jobOnDrawing } from '../../../core/job-file';
import { writableKind } from '../../../core/output/program-steps';
import { writeProgram } from '../../../core/output/write-program';
import { createPipeline } from '../../../core/pipeline';
import type { Member, Plan } from '../../../core/plan';
import { blockWork } from '../../../core/wire/block-work';
import { contourMoves, distanceToMoves, pointsOfMove } from '../../support/move-distance';
import { rs274 } from '../../support/outside-tool';
import { plainMove } from '../../support/rs274';
import { runProgram } from '../../support/run-program';

// Outside source: LinuxCNC's interpreter of RS274/NGC (NIST IR 6556) runs every program of every sample, offsets on
// or off, and the moves that it makes are held against the contours of the member and against its paths.
const { missing } = rs274();
const folder = new URL('../../../samples/', import.meta.url);
const drawings = readdirSync(folder).filter((name) => name.endsWith('.dxf'));

const units = { mm: 1, inch: 25.4 } as const;
const cases = [
  ['wire centre', 'mm'],
  ['wire centre', 'inch'],
  ['compensated', 'mm'],
  ['compensated', 'inch'],
] as const;

const passesOf = (member: Member) => member.cuts.flatMap((cut) => cut.passes);

type Program = (typeof cases)[number][0];

/** Runs every program of a plan: none comes into a member, and every path is cut. */
function expectSafe(plan: Plan, job: Job, program: Program): void {
  const { unit } = job.output;
  // Three steps of the interpreter's answer (4 decimals): it rounds both coordinates of ends and centres.
  const rounding = 3 * 0.0001 * units[unit];
  for (const block of plan.blocks) {
    const work = blockWork(plan, block);
    expect(writableKind(work, program)).toBe(program);
    const members = [...new Set(work.map(({ member }) => member))];
    expect(members).toHaveLength(block.memberIds.length);
    const passes = members.flatMap(passesOf);
    const offsets = Object.fromEntries(passes.map((pass) => [pass.pass + 1, pass.offset]));
    const run = runProgram(writeProgram(block, plan, job), offsets);
    expect(run.error).toBeNull();
    const feeds = run.moves.filter((move) => move.type !== 'rapid');
    const moves = feeds.map((move) => plainMove(move, units[unit]));

    const contour = members.flatMap(({ designed }) => designed.flatMap(contourMoves));
    const nearest = Math.min(...passes.map((pass) => pass.offset));
    const wire = moves.flatMap((move) => pointsOfMove(move, 0.4));
    const least = Math.min(...wire.map((point) => distanceToMoves(point, contour)));
    expect(least).toBeGreaterThan(nearest - rounding);

    // A control needs inside corners a little rounder than the wire; in a cusp that room shows enlarged.
    const room = program === 'compensated' ? 4 * tolerance.compensationRoom : 0;
    const wanted = passes
      .flatMap((pass) => contourMoves(pass.loop))
      .flatMap((move) => pointsOfMove(move, 0.4));
    const missed = Math.max(...wanted.map((point) => distanceToMoves(point, moves)));
    expect(missed).toBeLessThan(room + rounding);
  }
}

function jobOnSample(drawing: string): Job {
  return jobOnDrawing(drawing, new Uint8Array(readFileSync(new URL(drawing, folder))));
}

describe.skipIf(missing)('programs of the samples in the RS274/NGC interpreter', () => {
  expect(drawings.length).toBeGreaterThanOrEqual(4);
  describe.each(drawings)('%s', (drawing) => {
    const start = jobOnSample(drawing);
    const pipeline = createPipeline();
    it.each(cases)('%s, %s: cuts every path and never into the member', (program, unit) => {
      const job = { ...start, output: { ...start.output, unit, program } };
      const reply = pipeline.plan(job);
      if (!reply.ok) throw new Error(reply.problem.what);
      expectSafe(reply.value, job, program);
    });
  });
});

/** Ways of cutting in, of holding the piece and of working through a block. */
const ways: readonly (readonly [string, Partial<Job['lead']>, Partial<Job['setup']>])[] = [
  ['tangent arcs', { shape: 'tangent arc', arcRadius: 0.3 }, {}],
  ['slugs kept', { slug: 'kept' }, {}],
  ['three tabs each', { tabRule: 'typed', tabs: 3, tabLength: 0.8 }, {}],
  ['roughing first, everything from one block', {}, { sequence: 'roughing first', dies: 'one block' }],
  [
    'no tab, clockwise, a wide overlap',
    { tabRule: 'typed', tabLength: 0, direction: 'clockwise', overlap: 0.6 },
    {},
  ],
];

describe.skipIf(missing)('other ways of cutting in the RS274/NGC interpreter', () => {
  const start = jobOnSample('letterbox-hinge-leaf.dxf');
  describe.each(ways)('%s', (_, lead, setup) => {
    it.each(['wire centre', 'compensated'] as const)(
      '%s: cuts every path and never into the member',
      (program) => {
        const job = {
          ...start,
          lead: { ...start.lead, ...lead },
          setup: { ...start.setup, ...setup },
          output: { ...start.output, program },
        };
        const reply = createPipeline().plan(job);
        if (!reply.ok) throw new Error(reply.problem.what);
        expectSafe(reply.value, job, program);
      },
    );
  });
});
