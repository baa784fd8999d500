import { describe, expect, it } from 'vitest';
import { fileTrials } from '../../build/fuzz/file-trials';

/** A share of what `npm run fuzz:files` does at length: the same seeds every time. */
const perKind = 80;

describe('damaged and hostile files of every kind: opened as far as they can be trusted, or refused in words', () => {
  for (const trial of fileTrials()) {
    it(
      trial.name,
      () => {
        const outcomes = new Set<string>();
        for (let seed = 1; seed <= perKind; seed++) {
          // Throws where anything but a result or a clear problem comes of it.
          outcomes.add(trial.attempt(trial.bytes(seed), seed));
        }
        // Some are read and some refused: the damage is neither too slight nor too great to try anything.
        expect(outcomes.size).toBeGreaterThan(2);
      },
      120_000,
    );
  }
});
