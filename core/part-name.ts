/** What a contour is used for; a `mate` is a hole and the plug that goes into it. */
export type Use = 'blank' | 'pierce' | 'mate';

/** What a member is to the wire: an opening, with its steel around it, or a body. */
export type MemberRole = 'die' | 'punch';

/** The kind of steel that a member is cut in: it has its own height and passes. */
export type PlateName = 'stripper' | 'retainer';
export type PartName = MemberRole | PlateName;
