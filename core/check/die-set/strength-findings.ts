import type { ToolSheet } from '../../die/die-set';
import { punchSafety } from '../../die/die-rules';
import { punchModulus } from '../../die/punch-strength';
import type { PunchSheet } from '../../die/punch-sheet';
import { saySource } from '../../die/sourced';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { downToTenth } from '../../rounded-length';
import { sayForce, sayLength, shortNumber } from '../../say';

/** Punches that buckle or are crushed, and places of a punch thinner than the stock. */
export const strengthFindings = ({ punches }: ToolSheet, thickness: number): readonly Finding[] =>
  punches.flatMap((punch) => [...weakPunch(punch), ...thinPlace(punch, thickness)]);

function weakPunch({ memberId, contourId, strength, force }: PunchSheet): readonly Finding[] {
  if (!strength || force === null || strength.safety >= punchSafety.value) return [];
  const { limit, capacity, safety, slenderness, stress, longestLength } = strength;
  const how =
    limit === 'buckling'
      ? `buckles at ${sayForce(capacity)} (Euler, slenderness ${shortNumber(slenderness)}, E ${punchModulus.value} MPa: ${saySource(punchModulus)})`
      : `is crushed at ${sayForce(capacity)} (${shortNumber(stress)} MPa under load)`;
  return [
    findingOf({
      code: 'punch-weak',
      weight: safety < 1 ? 'stop' : 'decide',
      title: limit === 'buckling' ? 'The punch may buckle' : 'The punch may be crushed',
      message:
        `It takes ${sayForce(force)} with dull edges and ${how}: ${shortNumber(safety)} times the force, where ` +
        `${punchSafety.value} is wanted (${saySource(punchSafety)}).`,
      contourId,
      memberId,
      numbers: [
        { label: 'force, N', value: force, kind: 'count' },
        { label: 'capacity, N', value: capacity, kind: 'count' },
        { label: 'longest free length', value: longestLength, kind: 'length' },
      ],
      cures: [
        {
          kind: 'other',
          say: `Guide it in the stripper, or make it no longer than ${sayLength(downToTenth(longestLength / Math.sqrt(punchSafety.value)))} from the retainer; step its shank; grind shear on it.`,
        },
      ],
    }),
  ];
}

function thinPlace({ memberId, contourId, narrowest }: PunchSheet, thickness: number): readonly Finding[] {
  if (!narrowest || narrowest.width >= thickness) return [];
  const { from, to, width } = narrowest;
  return [
    findingOf({
      code: 'punch-thin',
      weight: 'decide',
      title: 'The punch is thinner than the stock',
      message: `Its narrowest place is ${sayLength(width)} wide, the stock ${sayLength(thickness)} thick (common practice: a punch at least as thick as the stock).`,
      place: { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2, reach: 3 * width },
      contourId,
      memberId,
      numbers: [{ label: 'width', value: width, kind: 'length' }],
      cures: [
        {
          kind: 'other',
          say: 'Guide the punch close to its tip, make it as an insert, or widen the feature.',
        },
      ],
    }),
  ];
}
