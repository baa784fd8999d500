import type { PassPath } from '../plan';

/** "rough", "skim 1", …, "relief". */
export const passName = ({ pass, lean }: Pick<PassPath, 'pass' | 'lean'>): string => {
  if (lean === 'relief') return 'relief';
  return pass === 0 ? 'rough' : `skim ${pass}`;
};
