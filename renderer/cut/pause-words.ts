import type { TimedPause } from '../replay/timeline';

/** What happens at a stop: as the program's comment says it, else by its word. */
export function pauseWords({ said, word, kind, isThreading }: TimedPause): string {
  if (said !== '') return sentence(said);
  if (isThreading) return `Thread the wire (${word})`;
  if (kind === 'stop') return `Stop (${word})`;
  return kind === 'may stop' ? `Stop where the switch asks for it (${word})` : word;
}

/** Programs shout; a list need not. Words with a number stay as they are. */
function sentence(said: string): string {
  const quiet = said === said.toUpperCase() ? said.toLowerCase() : said;
  return quiet.charAt(0).toUpperCase() + quiet.slice(1);
}
