import type { Finding } from '../finding';
import type { Box } from '../geometry/contour';
import type { ChangedPlace } from './changed-places';

/** What becomes of a disposition when the outline is revised. */
export interface Disposition {
  /** The finding as it was, with its reason. */
  readonly before: Finding;
  readonly reason: string;
  /** The same finding in the revised job; null where there is none any more. */
  readonly after: Finding | null;
  readonly fate: 'carried over' | 'reopened' | 'gone';
  /** Why, in a few words. */
  readonly why: string;
}

/**
 * Which accepted findings stay accepted in a revised job: those that are found again, same code, same member, same
 * place and numbers, and whose place no change of the outline touches. Where something changed within the finding's
 * reach a person has to look again. What is not found any more is gone. `settled` are the old job's reasons by key.
 */
export function carryDispositions(
  before: readonly Finding[],
  after: readonly Finding[],
  settled: Readonly<Record<string, { readonly reason: string }>>,
  changes: readonly ChangedPlace[],
): readonly Disposition[] {
  return before.flatMap((finding): readonly Disposition[] => {
    const reason = settled[finding.key]?.reason;
    if (reason === undefined || finding.weight !== 'decide') return [];
    const again = after.find((other) => isSame(finding, other)) ?? null;
    if (!again) {
      const near = after.find((other) => isSameKindNear(finding, other)) ?? null;
      return near
        ? [
            {
              before: finding,
              reason,
              after: near,
              fate: 'reopened',
              why: 'its numbers or its place changed',
            },
          ]
        : [{ before: finding, reason, after: null, fate: 'gone', why: 'it is not found any more' }];
    }
    const touching = changes.find((change) => touches(finding, change));
    return touching
      ? [{ before: finding, reason, after: again, fate: 'reopened', why: 'the outline changed here' }]
      : [{ before: finding, reason, after: again, fate: 'carried over', why: 'unchanged' }];
  });
}

/** Contours may be counted anew: the same place with the same numbers on the same kind of member is the same. */
function isSame(a: Finding, b: Finding): boolean {
  if (a.key === b.key) return true;
  return (
    isSameKindNear(a, b) &&
    a.numbers.length === b.numbers.length &&
    a.numbers.every(({ value }, k) => Math.abs(value - (b.numbers[k]?.value ?? Infinity)) < sameNumber)
  );
}

/** As keys tell numbers and places apart. */
const sameNumber = 1 / 10_000;
const samePlace = 1 / 100;

function isSameKindNear(a: Finding, b: Finding): boolean {
  if (a.code !== b.code || roleOf(a) !== roleOf(b)) return false;
  if (!a.place || !b.place) return a.place === b.place && a.message === b.message;
  return Math.hypot(a.place.x - b.place.x, a.place.y - b.place.y) <= samePlace;
}

/** `blank-c1-die` → `die`. */
const roleOf = ({ memberId }: Finding): string => memberId?.replace(/^.*-/, '') ?? '';

/** A finding about the whole job is touched by any change. */
function touches({ place }: Finding, { box }: ChangedPlace): boolean {
  if (!place) return true;
  const reach: Box = {
    minX: place.x - place.reach,
    minY: place.y - place.reach,
    maxX: place.x + place.reach,
    maxY: place.y + place.reach,
  };
  return box.minX <= reach.maxX && reach.minX <= box.maxX && box.minY <= reach.maxY && reach.minY <= box.maxY;
}
