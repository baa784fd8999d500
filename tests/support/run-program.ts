import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runRs274, type Rs274Reply } from './rs274.mjs';

/**
 * Runs a program of ours in LinuxCNC's interpreter. RS274/NGC chooses the unit by G20/G21, ISO 6983 by G70/G71: the
 * two words are exchanged and nothing else. `offsets`: mm by entry of the offset table; the interpreter wants tool
 * diameters.
 */
export function runProgram(text: string, offsets: Readonly<Record<number, number>> = {}): Rs274Reply {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-program-'));
  try {
    const file = join(folder, 'program.ngc');
    writeFileSync(file, text.replace(/^(N\d+) G71$/m, '$1 G21').replace(/^(N\d+) G70$/m, '$1 G20'));
    const tools = Object.fromEntries(Object.entries(offsets).map(([number, mm]) => [number, 2 * mm]));
    return runRs274(file, { tools });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
