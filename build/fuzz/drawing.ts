import { projectFolder } from '../run-command';
import { drawingSources } from './drawing-sources';
import { mutatedDrawing } from './mutate-drawing';
import { tryDrawing } from './try-drawing';
import { attemptTrials, watchTrial, type WatchedTrial } from './watch-trial';

/**
 * `npm run fuzz:drawing [cases] [first seed]`: damaged and hostile drawings, each read in a process that is watched: always
 * a clear answer.
 */
const [, , cases = '20000', firstSeed = '1', role] = process.argv;
const sources = drawingSources(projectFolder);
const trial: WatchedTrial = {
  name: 'drawing',
  bytes: (seed) => mutatedDrawing(sources, seed),
  attempt: tryDrawing,
};

if (role === 'worker') attemptTrials(trial);
else {
  const failed = await watchTrial(trial, Number(cases), Number(firstSeed), ['0', '0', 'worker']);
  process.exitCode = failed === 0 ? 0 : 1;
}
