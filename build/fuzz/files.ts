import { fileTrials } from './file-trials';
import { attemptTrials, watchTrial } from './watch-trial';

/**
 * `npm run fuzz:files [cases of each kind] [first seed] [kind]`: damaged and hostile job files, technology tables, program
 * styles, materials, measured points, SVG drawings and programs: each opens as far as it can be trusted or is refused in
 * words, and what opens can be worked with.
 */
const [, , cases = '20000', firstSeed = '1', kind = '', role] = process.argv;
const trials = fileTrials();
const wanted = kind === '' ? trials : trials.filter(({ name }) => name === kind);
if (wanted.length === 0) throw new Error(`No kind ${kind}: ${trials.map(({ name }) => name).join(', ')}`);

if (role === 'worker') wanted.forEach(attemptTrials);
else {
  let failed = 0;
  for (const trial of wanted)
    failed += await watchTrial(trial, Number(cases), Number(firstSeed), ['0', '0', trial.name, 'worker']);
  process.exitCode = failed === 0 ? 0 : 1;
}
