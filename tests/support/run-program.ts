import { runRs274, type Rs274Reply } from './rs274';

/**
 * Runs a program of ours in LinuxCNC's interpreter. RS274/NGC chooses the unit by G20/G21, ISO 6983 by G70/G71: the
 * two words are exchanged and nothing else. `offsets`: mm by entry of the offset table.
 */
export function runProgram(text: string, offsets: Readonly<Record<number, number>> = {}): Rs274Reply {
  return runRs274(text.replace(/^(N\d+) G71$/m, '$1 G21').replace(/^(N\d+) G70$/m, '$1 G20'), offsets);
}
