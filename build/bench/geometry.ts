import { spawnSync } from 'node:child_process';
import { markdownTable } from './markdown-table';
import {
  measureMany,
  measureMemory,
  measureOffset,
  type ManyMeasure,
  type OffsetMeasure,
} from './measure-offset';
import { measureProof, type ProofMeasure } from './measure-proof';
import {
  coarseChord,
  fineChord,
  goalsOf,
  timesOurs,
  type Reading,
  type WorkloadResult,
} from './offset-goals';
import { peers } from './peers/all-peers';
import { ownOffset } from './peers/own-offset';
import type { Peer } from './peers/peer';
import { stopAfter } from './stop-after';
import { workloadOf, workloads, type Workload } from './workloads';

/**
 * `npm run bench [-- workload …] [-- --limit seconds]`: our offset beside general libraries on the same outlines in the
 * same run, then the memory it takes, what several offsets of one contour cost, and what the independent proof costs.
 * Every library runs in a process of its own, in turns with ours, so that none pays for another's memory and a slow
 * moment of the machine falls on both. Times are processor times. A library that takes longer for a workload than the
 * limit is left out there and on all larger ones, and the table says so.
 */
const usualLimit = 60;

function compare(words: readonly string[]): void {
  const at = words.indexOf('--limit');
  const limit = at < 0 ? usualLimit : Number(words[at + 1]);
  const names = words.filter((_, i) => at < 0 || (i !== at && i !== at + 1));
  const wanted = names.length > 0 ? names.map(workloadOf) : workloads;
  const results: WorkloadResult[] = [];
  for (const workload of wanted) {
    const result = compareOn(workload, limit, results);
    results.push(result);
    printWorkload(result);
  }
  const largest = wanted.find(({ name }) => name === 'lines-120k');
  const memory = largest ? ask<number>(['memory', largest.name]) : null;
  const proof = names.length === 0 ? ask<ProofMeasure>(['proof']) : null;
  const goals = goalsOf(results, memory, proof);
  console.log('\n## Goals\n');
  console.log(
    markdownTable(
      ['goal', 'measured', ''],
      goals.map(({ goal, measured, met }) => [goal, measured, met ? 'met' : 'NOT met']),
    ),
  );
  if (proof)
    console.log(
      `\nProof: deepest gouge ${proof.gouge.toFixed(6)} mm, ${proof.passed ? 'passed' : 'NOT passed'}.`,
    );
}

function compareOn(workload: Workload, limit: number, before: readonly WorkloadResult[]): WorkloadResult {
  const own = read(ownOffset, workload, null, limit);
  const readings: Reading[] = [];
  for (const peer of peers) {
    for (const chord of peer.takesChords ? [coarseChord, fineChord] : [null]) {
      const easier = readings.find((reading) => reading.peer === peer.name);
      const foretold = foretell(workload, peer, chord, before);
      if (easier?.measures.length === 0)
        readings.push(empty(peer, chord, `over ${limit} s at the coarser chord`));
      else if (foretold > limit * 1000) {
        const why =
          foretold === Infinity
            ? `over ${limit} s on the smaller one`
            : `${Math.round(foretold / 1000)} s foretold by the smaller ones`;
        readings.push(empty(peer, chord, `not run: ${why}`));
      } else readings.push(read(peer, workload, chord, limit));
    }
  }
  const many = ask<ManyMeasure>(['many', workload.name]);
  return { workload, segments: workload.outline().length, own, peers: readings, many };
}

function read(peer: Peer, workload: Workload, chord: number | null, limit: number): Reading {
  const output = inOwnProcess(['offset', peer.name, workload.name, String(chord), String(limit)]);
  const measures = output.map((line) => JSON.parse(line) as OffsetMeasure);
  const note =
    measures.length === 0 ? `over ${limit} s` : measures.length === 1 ? `outward over ${limit} s` : '';
  return { peer: peer.name, chord, measures, note };
}

const empty = (peer: Peer, chord: number | null, note: string): Reading => ({
  peer: peer.name,
  chord,
  measures: [],
  note,
});

/** The time of both offsets that the smaller workloads of a kind foretell, ms: in proportion to the size, or steeper where two tell how it grows. */
function foretell(
  workload: Workload,
  peer: Peer,
  chord: number | null,
  before: readonly WorkloadResult[],
): number {
  const smaller = before.filter((result) => result.workload.kind === workload.kind);
  const times = smaller.map(({ peers: readings, segments }) => {
    const measures =
      readings.find((reading) => reading.peer === peer.name && reading.chord === chord)?.measures ?? [];
    return { segments, ms: measures.length === 0 ? Infinity : measures.reduce((sum, { ms }) => sum + ms, 0) };
  });
  const [last, earlier] = [times.at(-1), times.at(-2)];
  if (!last) return 0;
  const exponent = earlier ? Math.log(last.ms / earlier.ms) / Math.log(last.segments / earlier.segments) : 1;
  return last.ms * (workload.outline().length / last.segments) ** Math.max(1, exponent || 1);
}

function ask<T>(task: readonly string[]): T {
  const [line = 'null'] = inOwnProcess(task);
  return JSON.parse(line) as T;
}

/** The lines that a process of its own printed before it ended or its time was up. */
function inOwnProcess(words: readonly string[]): string[] {
  const run = spawnSync(process.execPath, ['--expose-gc', process.argv[1] ?? '', ...words], {
    encoding: 'utf8',
    maxBuffer: 2 ** 28,
  });
  if (run.status !== 0 && run.signal !== 'SIGKILL') throw new Error(`${words.join(' ')}: ${run.stderr}`);
  return run.stdout.split('\n').filter((line) => line.startsWith('{') || /^\d/.test(line));
}

function printWorkload({ workload, segments, own, peers: readings, many }: WorkloadResult): void {
  console.log(`\n## ${workload.name}: ${segments.toLocaleString('en-US')} ${workload.kind}\n`);
  const row = (reading: Reading): string[] => {
    const [inward, outward] = (['inward', 'outward'] as const).map((side) =>
      reading.measures.find((measure) => measure.side === side),
    );
    const largest = Math.max(...reading.measures.map(({ error }) => error));
    const ownArea = own.measures[0]?.area ?? NaN;
    return [
      reading.peer,
      reading.chord === null ? '–' : `${reading.chord * 1000} µm`,
      inward ? inward.ms.toFixed(2) : '–',
      outward ? outward.ms.toFixed(2) : '–',
      reading.measures.length > 0 ? `${timesOurs(reading).toFixed(1)}` : reading.note,
      inward ? `${inward.segments} / ${outward ? outward.segments : '–'}` : '–',
      inward ? `${inward.loops} / ${outward ? outward.loops : '–'}` : '–',
      inward ? `${((inward.area - ownArea) / ownArea).toExponential(0)}` : '–',
      reading.measures.length > 0 ? `${largest.toExponential(1)}` : '–',
    ];
  };
  console.log(
    markdownTable(
      [
        'library',
        'chord',
        'inward ms',
        'outward ms',
        '× ours',
        'segments in / out',
        'loops',
        'area off by',
        'largest error mm',
      ],
      [own, ...readings].map(row),
    ),
  );
  const shares = many.many.map(({ count, ms }) => `${count} offsets ${(ms / many.one).toFixed(2)}`);
  console.log(`\nSeveral offsets, in times of one: ${shares.join(', ')}.`);
}

const [, , task, ...rest] = process.argv;
switch (task) {
  case 'offset': {
    const [peer = '', workload = '', chord, limit] = rest;
    stopAfter(Number(limit));
    await measureOffset(peer, workloadOf(workload), Number(chord), (measure) => {
      console.log(JSON.stringify(measure));
    });
    break;
  }
  case 'many':
    console.log(JSON.stringify(measureMany(workloadOf(rest[0] ?? ''))));
    break;
  case 'memory':
    console.log(JSON.stringify(measureMemory(workloadOf(rest[0] ?? ''))));
    break;
  case 'proof':
    console.log(JSON.stringify(measureProof()));
    break;
  default:
    compare(process.argv.slice(2));
}
