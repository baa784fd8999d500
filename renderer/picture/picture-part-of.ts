import type { Member } from '../../core/plan';
import type { PicturePart } from '../state/app-state';

/** What a member is switched on and off with. */
export const picturePartOf = ({ part, role }: Pick<Member, 'part' | 'role'>): PicturePart =>
  part === 'stripper' || part === 'retainer' ? 'plates' : role;
