import type { Plan } from '../../core/plan';

/** The picture in words, for those who don't see it; the review list tells the rest. */
export function pictureWords(plan: Plan | null): string {
  if (!plan) return 'Nothing is open.';
  const { contours, members, open } = plan.summary;
  return (
    `${contours} contours, ${members} members. ${open.stop} findings to stop for, ${open.decide} to decide, ` +
    `${open.note} notes; the review list names each. Arrow keys move the picture.`
  );
}
