import { mostTabs } from '../cut-settings';

/** The piece that hangs at the tab. */
export interface HangingPiece {
  /** mm². */
  readonly area: number;
  /** mm. */
  readonly perimeter: number;
  /** Height of the block, mm. */
  readonly height: number;
}

export interface TabRule {
  readonly count: number;
  /** Of each, mm. */
  readonly length: number;
}

/**
 * How many tabs hold a piece and how long each is, from its weight and its perimeter.
 *
 * The piece hangs out from the tab like a bracket, its middle half its width a (perimeter / π) away, and two things
 * bend the tab: its weight W downwards, against the section modulus L·h²/6, and the flushing, whose pressure p on the
 * area a·h pushes it sideways, against h·L²/6. Both stresses meet at the tab's edge and must stay below σ:
 *
 *   σ = 3·W·a / (L·h²) + 3·p·a² / L², solved for the length L.
 *
 * p and σ are common practice: 0.05 MPa of the flushing pressure act to one side, and 50 MPa, far below the strength of
 * hard steel, keep the piece from springing against the wire. For a disk of 50 mm in 25 mm of steel that makes 2.8 mm.
 * Lengths stay between 0.5 and 6 mm (common practice); what would need more is shared by several tabs around the
 * piece, which then cannot swing at all.
 */
export function tabByWeight({ area, perimeter, height }: HangingPiece): TabRule {
  const across = perimeter / Math.PI;
  const weight = steelWeight * area * height;
  const ofWeight = (3 * weight * across) / height ** 2;
  const ofFlushing = 3 * flushing * across ** 2;
  const length = (ofWeight + Math.sqrt(ofWeight ** 2 + 4 * stress * ofFlushing)) / (2 * stress);
  const count = Math.min(mostTabs, Math.max(1, Math.ceil(length / longest)));
  const each = Math.min(longest, Math.max(shortest, length / count));
  // Nobody types or measures a tab to more than a tenth.
  return { count, length: Math.ceil(each * 10 - hair) / 10 };
}

/** N/mm³: steel of 7.85 g/cm³ under 9.81 m/s². */
const steelWeight = (7.85 * 9.81) / 1_000_000;
/** MPa. */
const flushing = 0.05;
const stress = 50;
/** mm. */
const shortest = 0.5;
const longest = 6;
const hair = 1 / 1_000_000;
