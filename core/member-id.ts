import type { MemberRole, PartName, Use } from './plan';

/** Names files, layers and choices; its second word is the contour's id. */
export const memberId = (use: Use, contourId: string, part: PartName): string =>
  `${use}-${contourId}-${use === 'mate' ? mateNames[part as MemberRole] : part}`;

/** What die and punch are where a plug goes into a hole. */
const mateNames: Readonly<Record<MemberRole, string>> = { die: 'hole', punch: 'plug' };
