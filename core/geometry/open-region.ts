import type { Region } from './contour';
import { offsetRegion, type PreparedRegion } from './offset-region';

/**
 * Opening of a region with a disc: what a disc of that radius can sweep without leaving the region (shrink, then grow
 * back). Outside corners get that radius, necks and spikes thinner than the disc are lost. Idempotent.
 */
export const openRegion = (region: Region | PreparedRegion, radius: number): Region =>
  offsetRegion(offsetRegion(region, -radius), radius);

/**
 * Closing of a region with a disc: what a disc that stays outside cannot sweep (grow, then shrink back). Inside
 * corners get that radius, slots narrower than the disc are filled. Idempotent.
 */
export const closeRegion = (region: Region | PreparedRegion, radius: number): Region =>
  offsetRegion(offsetRegion(region, radius), -radius);
