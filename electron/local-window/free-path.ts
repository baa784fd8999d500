import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { cleanFileName } from '../services/file-name-trouble';
import { withEnding, type OwnFileWords } from '../services/own-files';

/** A name in the folder that no file has: what is saved for the first time never replaces anything. */
export async function freePath(
  suggestedName: string,
  home: string,
  { ending, stem: noName }: OwnFileWords,
): Promise<string> {
  const stem = cleanFileName(withEnding(suggestedName, ending).slice(0, -ending.length), noName);
  for (let number = 1; ; number += 1) {
    const path = join(home, `${stem}${number === 1 ? '' : `-${number}`}${ending}`);
    const taken = await access(path).then(
      () => true,
      () => false,
    );
    if (!taken) return path;
  }
}
