import { chainTail } from '../../core/geometry/chain-tail';
import type { Chain, Point } from '../../core/geometry/contour';
import { chainLength } from '../../core/geometry/contour-measures';
import type { Cut, Plan, StartHole } from '../../core/plan';
import type { CutName } from '../state/cut-name';
import { membersOf } from '../../core/wire/members-of';

/** A stretch with what can be taken hold of. */
export interface CutPlace extends CutName {
  readonly memberId: string;
  readonly role: 'die' | 'punch';
  readonly start: StartHole | null;
  /** Middle of the tab before the stretch, or where its lead-in meets the loop. */
  readonly at: Point;
}

/** Every stretch of every cut, in the plan's order; made once for each plan. */
export function cutPlaces(plan: Plan): readonly CutPlace[] {
  const known = made.get(plan);
  if (known) return known;
  const places = membersOf(plan).flatMap(({ id, role, cuts }) =>
    cuts.flatMap((cut) =>
      cut.starts.flatMap((start, stretch) => {
        const at = placeOf(cut, stretch);
        return at ? [{ cutId: cut.id, stretch, memberId: id, role, start, at }] : [];
      }),
    ),
  );
  made.set(plan, places);
  return places;
}

const made = new WeakMap<Plan, readonly CutPlace[]>();

function placeOf({ tabs, passes }: Cut, stretch: number): Point | null {
  const [rough] = passes;
  const tab = rough?.tabs[(stretch + tabs.length - 1) % Math.max(1, tabs.length)];
  return tab ? middleOf(tab.cut) : (rough?.main[stretch]?.cut[0] ?? null);
}

/** An overlap goes over both ends of a tab alike, so its run's middle is the tab's. */
const middleOf = (chain: Chain): Point | null => chainTail(chain, chainLength(chain) / 2)[0] ?? null;
