import type { Member, Pair, Plan } from '../plan';

/** Every member of a plan: dies and punches, and the openings of plates. */
export const membersOf = ({ pairs }: Pick<Plan, 'pairs'>): readonly Member[] => pairs.flatMap(membersOfPair);

export const membersOfPair = ({ die, punch, plates }: Pair): readonly Member[] => [
  die,
  punch,
  ...plates.map(({ member }) => member),
];
