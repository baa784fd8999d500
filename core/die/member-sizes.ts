import type { Use } from '../part-name';

/** How far a member's contour lies outside the drawing's contour, mm; negative inside it. */
export interface MemberSizes {
  readonly dieOffset: number;
  readonly punchOffset: number;
}

/**
 * Which member takes the clearance; a plug takes the gap to its hole. Blanking: the die gives the part its size and the punch is smaller; piercing: the
 * punch gives the hole its size and the die opening is larger (Groover, Fundamentals of Modern Manufacturing, chapter 20).
 * Example: a 30 mm hole with 0.192 mm per side: punch 30, die opening 30.384.
 */
export function memberSizes(use: Use, clearancePerSide: number): MemberSizes {
  return use === 'pierce'
    ? { dieOffset: clearancePerSide, punchOffset: 0 }
    : { dieOffset: 0, punchOffset: -clearancePerSide };
}
