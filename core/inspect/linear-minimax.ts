import { invariant } from '../problem';
import { tolerance } from '../geometry/tolerance';
import { solved } from './solve-linear';

/** A value that changes linearly with a step: value + gradient · step. */
export interface LinearValue {
  readonly value: number;
  readonly gradient: readonly number[];
}

export interface MinimaxStep {
  readonly step: readonly number[];
  /** The least of all values after the step. */
  readonly least: number;
}

/**
 * The step, no component longer than `reach`, that makes the least of some linear values as great as can be. A linear
 * program in few unknowns and many rows; solved through its dual by the revised simplex method, whose basis has only one
 * row more than there are unknowns. Needs at least one value.
 */
export function linearMinimax(values: readonly LinearValue[], reach: number): MinimaxStep {
  const [first] = values;
  invariant(first, 'a minimax step needs a value');
  const unknowns = first.gradient.length;
  const columns = [...values.map(columnOf), ...boundColumns(unknowns, reach)];
  const target = Array.from({ length: unknowns + 1 }, (_, k) => (k === unknowns ? 1 : 0));
  let basis = firstBasis(values, unknowns);
  for (let round = 0; ; round++) {
    const matrix = basis.map((j) => (columns[j] as Column).entries);
    // Rows are basis columns: this is the transposed system, and its solution the step and the least value.
    const primal = solved(
      matrix,
      basis.map((j) => (columns[j] as Column).cost),
    );
    const weights = solved(transposed(matrix), target);
    invariant(primal && weights, 'a simplex basis is never singular');
    const entering = enteringColumn(columns, primal, round > cautiousAfter);
    if (entering < 0 || round > mostRounds) {
      return { step: primal.slice(0, unknowns), least: primal[unknowns] as number };
    }
    basis = exchanged(basis, matrix, weights, entering, (columns[entering] as Column).entries);
  }
}

interface Column {
  readonly entries: readonly number[];
  readonly cost: number;
}

/** least − gradient · step ≤ value. */
const columnOf = ({ value, gradient }: LinearValue): Column => ({
  entries: [...gradient.map((g) => -g), 1],
  cost: value,
});

/** ±step ≤ reach, two columns for each unknown. */
const boundColumns = (unknowns: number, reach: number): readonly Column[] =>
  Array.from({ length: 2 * unknowns }, (_, k) => ({
    entries: Array.from({ length: unknowns + 1 }, (_entry, row) =>
      row === k >> 1 ? (k % 2 === 0 ? 1 : -1) : 0,
    ),
    cost: reach,
  }));

/** The least value alone, with the bounds that its gradient runs against: feasible without a search. */
function firstBasis(values: readonly LinearValue[], unknowns: number): readonly number[] {
  let least = 0;
  for (const [i, { value }] of values.entries()) if (value < (values[least] as LinearValue).value) least = i;
  const { gradient } = values[least] as LinearValue;
  const bounds = Array.from(
    { length: unknowns },
    (_, k) => values.length + 2 * k + ((gradient[k] as number) >= 0 ? 0 : 1),
  );
  return [...bounds, least];
}

/** The column most against the present solution; after many rounds the first one, which cannot go round in circles (Bland's rule). */
function enteringColumn(columns: readonly Column[], primal: readonly number[], isCautious: boolean): number {
  let best = -tolerance.samePoint;
  let entering = -1;
  for (const [j, { entries, cost }] of columns.entries()) {
    const reduced = cost - dot(entries, primal);
    if (reduced >= best) continue;
    entering = j;
    if (isCautious) return entering;
    best = reduced;
  }
  return entering;
}

function exchanged(
  basis: readonly number[],
  matrix: readonly (readonly number[])[],
  weights: readonly number[],
  entering: number,
  entries: readonly number[],
): readonly number[] {
  const direction = solved(transposed(matrix), entries);
  invariant(direction, 'a simplex basis is never singular');
  let leaving = -1;
  let ratio = Infinity;
  for (const [k, step] of direction.entries()) {
    if (step <= tolerance.samePoint) continue;
    const candidate = Math.max(0, weights[k] as number) / step;
    const isFirst = candidate === ratio && (basis[k] as number) < (basis[leaving] as number);
    if (candidate < ratio || isFirst) [ratio, leaving] = [candidate, k];
  }
  invariant(leaving >= 0, 'the step is bounded, so some column leaves');
  return basis.map((j, k) => (k === leaving ? entering : j));
}

/** Rounds with the fastest rule, then with the safe one; a basis is found in a few dozen. */
const cautiousAfter = 200;
const mostRounds = 1000;

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * (b[k] as number), 0);

const transposed = (rows: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  rows.map((_, k) => rows.map((row) => row[k] as number));
