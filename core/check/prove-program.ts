import type { Region } from '../geometry/contour';
import { nearestLoop } from '../geometry/nearest-loop';
import { reversedContour } from '../geometry/contour-measures';
import { tolerance } from '../geometry/tolerance';
import type { Member, MemberRole, Proof } from '../plan';
import { sayProblem } from '../problem';
import { sayLength } from '../say';
import { asCutRegion, pathLoops } from '../wire/as-cut';
import { compensationRoom } from '../wire/compensation-room';
import { allowedGouge } from './allowed-gouge';
import type { Finding } from '../finding';
import { proveRelief } from './prove-relief';
import { besideLoop } from './beside-loop';
import { clearOfMember } from './clear-of-member';
import { closedLoop } from './closed-loop';
import type { IntendedMoves } from './intended-moves';
import type { ProgramDialect } from './program-dialect';
import type { ProgramFault } from './program-fault';
import type { ProgramReading } from './program-reading';
import { programRules } from './program-rules';
import { proveMember, type FinishedLoop } from './prove-member';
import { readProgram } from './read-program';
import { sameMoves } from './same-moves';
import { unproved } from './unproved';
import { wirePath, type WireMove } from './wire-path';

export interface ProgramToProve {
  /** As it is written, byte for byte. */
  readonly text: string;
  readonly dialect: ProgramDialect;
  /** The members that it cuts from one block: all of one role, or a punch with openings in it. */
  readonly members: readonly Omit<Member, 'proof'>[];
  /** Half the wire and the finishing pass's spark gap, mm. */
  readonly reach: number;
  /** Entries of the control's table, mm by number. */
  readonly offsets: ReadonlyMap<number, number>;
  readonly intended: IntendedMoves;
}

export interface ProgramProof {
  /** By member id. */
  readonly proofs: ReadonlyMap<string, Proof>;
  readonly faults: readonly ProgramFault[];
  /** How much rounder than the wire its contour is, mm; 0 where it says the way of the wire's centre itself. */
  readonly rounder: number;
  /** What the planes above the program's own say, where the wire leans. */
  readonly ofReliefs: readonly Finding[];
}

/**
 * The proof of a program from its text. It is read back; what it says is held against what was intended and against
 * the rules of controls; the wire's way, offset by our own arithmetic of a control where the program leaves that to
 * it, is held clear of all members; and the loops that the text's own moves close are swept by clipper-lib. A text with
 * a fault proves no member and is not swept.
 */
export function proveProgram(given: ProgramToProve): ProgramProof {
  const { members } = given;
  const { saysFeeds } = given.dialect;
  const reading = readProgram(given.text, given.dialect);
  if (!reading.ok) {
    const line = Number(/^line (\d+)$/.exec(reading.problem.where)?.[1] ?? Number.NaN);
    const fault = { line: Number.isNaN(line) ? null : line, say: sayProblem(reading.problem), at: null };
    return { proofs: new Map(members.map(({ id }) => [id, unproved])), ...none, faults: [fault] };
  }
  const path = wirePath(reading.value, given.offsets);
  const faults = [
    ...sameMoves(reading.value, given.intended, saysFeeds),
    ...programRules(reading.value, saysFeeds),
    ...tableFaults(reading.value, given.offsets),
    ...path.faults,
  ];
  const { step, moves } = reading.value;
  const rounder = moves.some(({ side }) => side !== 'off') ? compensationRoom(step) : 0;
  const loops = members.map((member) =>
    finishedLoops(member, path.moves, step, roundedPath(member, given.reach, rounder)),
  );
  const reliefs = members.map((member) => proveRelief(member, path.moves, step));
  faults.push(
    ...nearnessFaults(path.moves, given, step),
    ...[...loops, ...reliefs].flatMap((of) => of.faults),
  );
  if (faults.length > 0) {
    return { proofs: new Map(members.map(({ id }) => [id, unproved])), ...none, faults };
  }
  const proofs = members.map(({ id, role, designed }, index): [string, Proof] => [
    id,
    proveMember(designed, role, loops[index]?.finished ?? [], given.reach, step),
  ]);
  return { proofs: new Map(proofs), faults, rounder, ofReliefs: reliefs.flatMap(({ findings }) => findings) };
}

const none = { rounder: 0, ofReliefs: [] };

/** Every loop of the member's cuts as the program's own moves close it. */
function finishedLoops(
  { cuts }: Pick<Member, 'cuts'>,
  moves: readonly WireMove[],
  step: number,
  rounded: Region,
): { readonly finished: readonly FinishedLoop[]; readonly faults: readonly ProgramFault[] } {
  const finished: FinishedLoop[] = [];
  const faults: ProgramFault[] = [];
  for (const { passes, waste } of cuts) {
    // A relief comes after the opening is finished, and is proved as a surface of its own.
    const finishing = passes.filter(({ lean }) => lean !== 'relief');
    const last = finishing.at(-1);
    if (!last) continue;
    const wanted = nearestLoop(rounded, last.loop) ?? last.loop;
    const { loop, fault } = closedLoop(moves, wanted, besideLoop(finishing, finishing.length - 1, step));
    if (loop) finished.push({ waste, loop });
    else faults.push(fault);
  }
  return { finished, faults };
}

/** Where the wire goes if its contour is `rounder` than it would make it; empty where it is told its own way. */
const roundedPath = (
  { designed, role }: Pick<Member, 'designed' | 'role'>,
  reach: number,
  rounder: number,
): Region => (rounder > 0 ? pathLoops(asCutRegion(designed, role, reach + rounder), role, reach) : []);

/** The wire's way too near to a member or on its side; the finishing pass's own depth the sweep says more exactly. */
function nearnessFaults(moves: readonly WireMove[], given: ProgramToProve, step: number): ProgramFault[] {
  const { role, designed } = steelOf(given.members);
  const near = clearOfMember(moves, designed, role, given.reach);
  const faults: ProgramFault[] = [];
  if (near.wrongSide !== null) {
    faults.push({ line: near.wrongSide, say: 'The wire cuts where the member has to stay', at: null });
  }
  if (near.depth > allowedGouge(step)) {
    const say = `The wire cuts ${sayLength(near.depth)} into the member`;
    faults.push({ line: near.line, say, at: near.at });
  }
  return faults;
}

/** What has to stay: the openings' surroundings, or bodies, the openings in them clockwise. */
function steelOf(members: ProgramToProve['members']): { role: MemberRole; designed: Region } {
  const isBody = members.some(({ role }) => role === 'punch');
  return {
    role: isBody ? 'punch' : 'die',
    designed: members.flatMap(({ role, designed }) =>
      isBody && role === 'die' ? designed.map(reversedContour) : designed,
    ),
  };
}

/** What the program says of the control's table against the table it was made for. */
function tableFaults({ stated }: ProgramReading, offsets: ReadonlyMap<number, number>): ProgramFault[] {
  return [...stated].flatMap(([number, mm]) => {
    const offset = offsets.get(number);
    if (offset !== undefined && Math.abs(offset - mm) <= tolerance.statedOffset) return [];
    const wanted = offset === undefined ? 'has no such entry' : `needs ${offset.toFixed(5)} mm`;
    return [{ line: null, say: `The program states D${number} = ${mm} mm and ${wanted}`, at: null }];
  });
}
