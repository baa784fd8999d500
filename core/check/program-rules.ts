import { tolerance } from '../geometry/tolerance';
import type { ProgramFault } from './program-fault';
import type { ProgramMove, ProgramReading } from './program-reading';

/**
 * What no program may have, whatever it cuts: an arc whose radii at its ends differ by more than rounding to the last
 * decimal explains, a stop while the offset is on (a control that stops so may cut into an inside corner), a rapid move
 * while the wire is in the kerf, a cut without a feed where the program says feeds.
 */
export function programRules(reading: ProgramReading, saysFeeds: boolean): readonly ProgramFault[] {
  return [
    ...unevenArcs(reading),
    ...offsetAtStops(reading),
    ...rapidsInKerf(reading),
    ...(saysFeeds ? withoutFeed(reading) : []),
  ];
}

function unevenArcs({ moves, step, unit }: ProgramReading): ProgramFault[] {
  // Three points rounded in two coordinates.
  const limit = Math.min(
    2 * Math.SQRT2 * step,
    unit === 'inch' ? tolerance.arcRadiiInch : tolerance.arcRadii,
  );
  return moves.flatMap((move) => {
    const { from, to, centre, line } = move;
    if (!centre) return [];
    const start = Math.hypot(from.x - centre.x, from.y - centre.y);
    const end = Math.hypot(to.x - centre.x, to.y - centre.y);
    if (Math.abs(start - end) <= limit) return [];
    const say = `The arc's radius is ${start.toFixed(5)} mm at its start and ${end.toFixed(5)} mm at its end`;
    return [{ line, say, at: to }];
  });
}

function offsetAtStops({ moves, pauses }: ProgramReading): ProgramFault[] {
  return pauses.flatMap(({ line, kind, side, afterMoves }) => {
    if (kind === 'machine' || side === 'off') return [];
    return [{ line, say: 'The program stops with the offset on', at: moves[afterMoves - 1]?.to ?? null }];
  });
}

function rapidsInKerf({ moves, pauses }: ProgramReading): ProgramFault[] {
  const waits = new Set(pauses.map(({ afterMoves }) => afterMoves));
  return moves.flatMap((move, index) => {
    const before = moves[index - 1];
    if (move.kind !== 'rapid' || !before || before.kind === 'rapid' || waits.has(index)) return [];
    return [{ line: move.line, say: 'A rapid move while the wire is in the kerf breaks it', at: move.to }];
  });
}

function withoutFeed({ moves }: ProgramReading): ProgramFault[] {
  const bare = moves.find((move: ProgramMove) => move.kind !== 'rapid' && !((move.feed ?? 0) > 0));
  return bare ? [{ line: bare.line, say: 'The wire cuts before a feed is given', at: bare.to }] : [];
}
