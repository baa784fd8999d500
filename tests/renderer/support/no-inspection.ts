import { failed } from '../../../core/problem';
import type { CoreConnection } from '../../../renderer/worker/messages';

const refused = () => Promise.resolve(failed('not-asked', 'This test does not inspect', '', 'Ask another.'));

/** The part of a core that answers about inspection, for tests that ask nothing of it. */
export const noInspection: Pick<CoreConnection, 'clearance' | 'evenPosition' | 'measured' | 'revision'> = {
  clearance: refused,
  evenPosition: refused,
  measured: refused,
  revision: refused,
};
