import type { ProgramSheet } from '../../core/block-program';
import { readProgram } from '../../core/check/read-program';
import { wirePath } from '../../core/check/wire-path';
import type { Problem } from '../../core/problem';
import type { MadePlan } from '../state/made-plan';
import { loosePieces, type LoosePiece } from './loose-pieces';
import { timelineOf, type Timeline } from './timeline';

/** A block's program as it is shown and played. */
export interface ShownProgram {
  readonly blockId: string;
  /** The plan that it belongs to. */
  readonly made: MadePlan;
  readonly lines: readonly string[];
  readonly timeline: Timeline;
  readonly loose: readonly LoosePiece[];
  /** Why the text cannot be played; null where it can. */
  readonly problem: Problem | null;
  /** Half the wire, and half the slit that the finishing pass leaves, mm. */
  readonly wireRadius: number;
  readonly kerfRadius: number;
}

/** Reads a program's text and puts it on the clock. What is played is the text, never the plan. */
export function showProgram(sheet: ProgramSheet, made: MadePlan): ShownProgram {
  const { job, plan } = made;
  const part = plan.blocks.find(({ id }) => id === sheet.blockId)?.part ?? 'die';
  const lines = sheet.text.split(/\r\n|\r|\n/);
  if (lines.at(-1) === '') lines.pop();
  const shown = {
    blockId: sheet.blockId,
    made,
    lines,
    wireRadius: job.wire.diameter / 2,
    kerfRadius: plan.reach[part],
  };
  const reading = readProgram(sheet.text, sheet.dialect);
  if (!reading.ok) return { ...shown, timeline: empty, loose: [], problem: reading.problem };
  const path = withFeeds(wirePath(reading.value, sheet.offsets), sheet.feeds);
  const timeline = timelineOf(path, reading.value, 60 * job.technology.machine.threadingMinutes);
  const loose = loosePieces(plan, sheet.blockId, timeline, reading.value);
  return { ...shown, timeline, loose, problem: null };
}

/** Feeds of their own where the program leaves them to the control. */
function withFeeds(
  path: ReturnType<typeof wirePath>,
  feeds: ProgramSheet['feeds'],
): ReturnType<typeof wirePath> {
  if (!feeds) return path;
  return { ...path, moves: path.moves.map((move) => ({ ...move, feed: feeds[move.move] ?? null })) };
}

const empty: Timeline = { moves: [], starts: new Float64Array(1), total: 0, pauses: [] };
