import { done, failed, type Result } from '../problem';

export interface WirePass {
  /** mm per side. */
  readonly sparkGap: number;
  /** Stock left on the member after the pass, mm. */
  readonly stockLeft: number;
  /** mm/min. */
  readonly feed: number;
}

export interface PassOffset {
  /** 0 the rough cut. */
  readonly pass: number;
  /** Distance of the wire's centre from the member's contour, mm. */
  readonly offset: number;
  readonly feed: number;
}

/**
 * d_k = wire diameter / 2 + spark gap_k + stock left after pass k, mm. Example: wire 0.25, gap 0.025, nothing left:
 * 0.150. The last pass leaves nothing, and no pass may run farther from the contour than the one before it, which
 * would cut air; either is a problem for the user.
 */
export function passOffsets(diameter: number, passes: readonly WirePass[]): Result<readonly PassOffset[]> {
  const offsets = passes.map(({ sparkGap, stockLeft, feed }, pass) => ({
    pass,
    offset: diameter / 2 + sparkGap + stockLeft,
    feed,
  }));
  const last = passes[passes.length - 1];
  if (!last) return failed('passes-none', 'There is no pass', 'passes', 'Add at least the rough cut.');
  if (last.stockLeft !== 0) {
    return failed(
      'passes-leave-stock',
      'The last pass leaves stock on the member',
      `pass ${passes.length}`,
      'Set its stock left to 0, or add a skim that takes the rest.',
    );
  }
  const outward = offsets.findIndex((pass, k) => k > 0 && pass.offset > (offsets[k - 1]?.offset ?? Infinity));
  if (outward > 0) {
    return failed(
      'passes-out-of-order',
      `Pass ${outward + 1} runs farther from the contour than the pass before it`,
      `pass ${outward + 1}`,
      'Lower its spark gap or stock left, so that every pass comes nearer to the contour.',
    );
  }
  return done(offsets);
}

/** The smallest inside radius the wire can cut: half its diameter plus the finishing pass's spark gap, mm. */
export function reachOf(diameter: number, passes: readonly { readonly sparkGap: number }[]): number {
  return diameter / 2 + (passes[passes.length - 1]?.sparkGap ?? 0);
}

/** Wire diameters in common use, mm (0.10 to 0.30: facts of the trade, common practice), thickest first. */
export const wireDiameters = [0.3, 0.25, 0.2, 0.15, 0.1] as const;
