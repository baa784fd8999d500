import { saySource } from '../../die/sourced';
import type { StripPlan } from '../../die/strip-plan';
import { leastBridge } from '../../die/strip-rules';
import type { Finding } from '../../finding';
import { findingOf } from '../../finding-of';
import { sayLength } from '../../say';

/** Bridges thinner than the rule, and a strip without a place for a pilot. */
export function stripFindings({
  layout,
  leastBridge: least,
  pilots,
  pilotDiameter,
}: StripPlan): readonly Finding[] {
  const thin = Math.min(layout.bridge, layout.edge);
  return [
    ...(thin < least * (1 - 1 / 1_000_000)
      ? [
          findingOf({
            code: 'bridge-thin',
            weight: 'decide',
            title: 'The scrap bridge is thin',
            message: `It is ${sayLength(thin)}; ${sayLength(least)} is the rule for this stock and size (${saySource(leastBridge)}).`,
            numbers: [{ label: 'bridge', value: thin, kind: 'length' }],
            cures: [{ kind: 'other', say: 'Widen it, or expect the scrap to break and jam in the die.' }],
          }),
        ]
      : []),
    ...(pilots.length === 0
      ? [
          findingOf({
            code: 'no-pilot',
            weight: 'note',
            title: 'No place for a pilot',
            message:
              `Neither a round hole of the piece nor the scrap has room for a pilot of ${sayLength(pilotDiameter)}: ` +
              'the strip is then located by its edge and a stop.',
            numbers: [{ label: 'pilot', value: pilotDiameter, kind: 'length' }],
          }),
        ]
      : []),
  ];
}
