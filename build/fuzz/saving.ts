import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readJobFile } from '../../core/job-file';
import { createDrafts } from '../../electron/services/drafts';
import { runSession, wireOfEdit } from './saving-session';
import { SeededRandom } from './seeded-random';

/**
 * `npm run fuzz:saving [kills] [seed]`: an editing session in a process of its own, killed (SIGKILL) at random moments.
 * A saved file is always whole and no older than the last save; no more than 2 s of edits are ever lost.
 */
const [, , wantedKills = '500', wantedSeed = '1', sessionFolder = ''] = process.argv;
const mostLost = 2000;

if (sessionFolder !== '') void runSession(sessionFolder);
else void killMany(Number(wantedKills), Number(wantedSeed));

interface Killed {
  readonly folder: string;
  readonly edits: readonly { readonly edit: number; readonly at: number }[];
  readonly lastSaved: number;
  readonly killedAt: number;
}

async function killMany(kills: number, seed: number): Promise<void> {
  const random = new SeededRandom(seed);
  let [worst, failed, withDraft] = [0, 0, 0];
  for (let kill = 1; kill <= kills; kill++) {
    const killed = await killOne(random);
    const { trouble, lost, hadDraft } = await judge(killed);
    if (trouble !== '') {
      failed++;
      console.log(`FAILED kill ${kill}: ${trouble} (${killed.folder})`);
    } else rmSync(killed.folder, { recursive: true });
    worst = Math.max(worst, lost);
    if (hadDraft) withDraft++;
    if (kill % 25 === 0) console.log(`${kill} of ${kills} kills, ${failed} failed`);
  }
  console.log(
    `${kills} kills, ${withDraft} with a draft left over, at most ${worst} ms of edits lost, ${failed} failed`,
  );
  process.exitCode = failed === 0 ? 0 : 1;
}

/** Runs a session and kills it at a random moment of its first seconds, counted from its first edit. */
function killOne(random: SeededRandom): Promise<Killed> {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-kill-'));
  const session = spawn(process.execPath, [process.argv[1] ?? '', '0', '0', folder], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  let killedAt = 0;
  session.stdout.on('data', (part: Buffer) => {
    if (said === '') {
      setTimeout(() => {
        killedAt = Date.now();
        session.kill('SIGKILL');
      }, random.below(3000));
    }
    said += part.toString();
  });
  return new Promise((resolve) => {
    session.on('close', () => {
      const lines = said.split('\n').slice(0, -1);
      const edits = lines
        .filter((line) => line.startsWith('edited'))
        .map((line) => ({ edit: Number(line.split(' ')[1]), at: Number(line.split(' ')[2]) }));
      const lastSaved = Number(lines.findLast((line) => line.startsWith('saved'))?.split(' ')[1] ?? 0);
      resolve({ folder, edits, lastSaved, killedAt });
    });
  });
}

async function judge({ folder, edits, lastSaved, killedAt }: Killed): Promise<{
  trouble: string;
  lost: number;
  hadDraft: boolean;
}> {
  const path = join(folder, 'session.diewright.json');
  let kept = 0;
  if (existsSync(path)) {
    const saved = editOf(readFileSync(path, 'utf8'));
    if (saved === null) return { trouble: 'the saved file is damaged', lost: 0, hadDraft: false };
    if (saved < lastSaved) {
      return { trouble: `edit ${lastSaved} was saved, ${saved} is there`, lost: 0, hadDraft: false };
    }
    kept = saved;
  } else if (lastSaved > 0) return { trouble: 'the saved file is gone', lost: 0, hadDraft: false };
  const left = await createDrafts(join(folder, 'drafts')).leftOver();
  const [draft] = left.ok ? left.value : [];
  if (draft) kept = Math.max(kept, editOf(draft.job) ?? 0);
  // Lost is what was made after the last edit kept; the time from the first lost one to the kill is what it cost.
  const firstLost = edits.find(({ edit }) => edit > kept);
  const lost = firstLost ? killedAt - firstLost.at : 0;
  const trouble = lost > mostLost ? `${lost} ms of edits lost` : '';
  return { trouble, lost, hadDraft: draft !== undefined };
}

/** The number of the last edit that a job file holds; null where it is not whole. */
function editOf(text: string): number | null {
  const job = readJobFile(text);
  if (!job.ok) return null;
  const edit = Math.round(job.value.wire.diameter * 1000) - 1;
  return Math.abs(wireOfEdit(edit) - job.value.wire.diameter) < 1e-9 ? edit : null;
}
