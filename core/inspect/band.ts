import { tolerance as tolerances } from '../geometry/tolerance';

/** Where a clearance lies: punch and die touch or overlap, too little, within the tolerance, too much. */
export const bands = ['contact', 'tight', 'within', 'wide'] as const;
export type Band = (typeof bands)[number];

/** What a clearance is called by where it lies. */
export const bandNames: Readonly<Record<Band, string>> = {
  contact: 'touching or overlapping',
  tight: 'too little',
  within: 'within the tolerance',
  wide: 'too much',
};

/** The band of a clearance, mm; one that only rounding keeps from a limit is within it. */
export function bandOf(clearance: number, wanted: number, tolerance: number): Band {
  const slack = tolerances.sameBoundary;
  if (clearance <= slack) return 'contact';
  if (clearance < wanted - tolerance - slack) return 'tight';
  return clearance > wanted + tolerance + slack ? 'wide' : 'within';
}
