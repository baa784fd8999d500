import type { MemberRole } from './plan';

/** Names files, layers and choices; its second word is the contour's id. */
export const memberId = (use: 'blank' | 'pierce', contourId: string, role: MemberRole): string =>
  `${use}-${contourId}-${role}`;
