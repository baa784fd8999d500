import type { Point } from '../geometry/contour';

/** Where the axes stand: X and Y, and the secondary axes U and V that lean the wire. mm. */
export interface AxisPlace extends Point {
  readonly u: number;
  readonly v: number;
}

export type OffsetSide = 'off' | 'left' | 'right';

/** One move of a program as its text says it. */
export interface ProgramMove {
  /** Line of the text, from 1. */
  readonly line: number;
  readonly kind: 'rapid' | 'line' | 'arc';
  readonly from: AxisPlace;
  readonly to: AxisPlace;
  /** Of an arc in X and Y, mm; null for a straight move. */
  readonly centre: Point | null;
  /** Angle that an arc sweeps, radians, positive counter-clockwise; 0 for a straight move. */
  readonly turn: number;
  /** mm/min; null while none was given. */
  readonly feed: number | null;
  /** The offset in force during the move, and the entry of the control's table that it uses. */
  readonly side: OffsetSide;
  readonly register: number | null;
}

/** A place where the machine waits or does something else than move. */
export interface ProgramPause {
  readonly line: number;
  /** So many moves are done by then. */
  readonly afterMoves: number;
  /** `stop` waits for a person (M00), `may stop` where a switch asks for it (M01), `machine` is any other M word. */
  readonly kind: 'stop' | 'may stop' | 'machine';
  /** The M word, e.g. `M00`. */
  readonly word: string;
  /** What the line's comment says. */
  readonly said: string;
  readonly side: OffsetSide;
  /** The program's last move before it was a rapid one: the wire is out, and a stop is for threading. */
  readonly afterRapid: boolean;
}

/** A program as read from its text; lengths in mm whatever the program's unit. */
export interface ProgramReading {
  readonly unit: 'mm' | 'inch';
  /** The last decimal of its coordinates, mm. */
  readonly step: number;
  /** The last decimal of its feeds, mm/min. */
  readonly feedStep: number;
  readonly moves: readonly ProgramMove[];
  readonly pauses: readonly ProgramPause[];
  /** Entries of the offset table that comments state, mm by number. */
  readonly stated: ReadonlyMap<number, number>;
  readonly lines: number;
}
