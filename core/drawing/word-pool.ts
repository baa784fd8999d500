import { isBlank, textAt, type Pairs } from './pairs';

/** The same text once, however often a file repeats it: kinds and layers stand there a hundred thousand times. */
export class WordPool {
  private readonly pairs: Pairs;
  private readonly decode: (latin: string) => string;
  private readonly words = new Map<number, Word[]>();

  constructor(pairs: Pairs, decode: (latin: string) => string = (latin) => latin) {
    this.pairs = pairs;
    this.decode = decode;
  }

  /** The decoded text of a pair. */
  at(i: number): string {
    const { bytes, starts, ends } = this.pairs;
    let start = starts[i] as number;
    let end = ends[i] as number;
    while (start < end && isBlank(bytes[start] as number)) start++;
    while (end > start && isBlank(bytes[end - 1] as number)) end--;
    // FNV-1a; words with one hash are told apart by their letters.
    let hash = 0x811c9dc5 | 0;
    for (let k = start; k < end; k++) hash = Math.imul(hash ^ (bytes[k] as number), 0x01000193);
    const known = this.words.get(hash);
    const word = known?.find(({ latin }) => isSame(latin, bytes, start, end));
    if (word) return word.text;
    const latin = textAt(this.pairs, i);
    const text = this.decode(latin);
    if (known) known.push({ latin, text });
    else this.words.set(hash, [{ latin, text }]);
    return text;
  }
}

interface Word {
  readonly latin: string;
  readonly text: string;
}

function isSame(latin: string, bytes: Uint8Array, start: number, end: number): boolean {
  if (latin.length !== end - start) return false;
  for (let k = 0; k < latin.length; k++) if (latin.charCodeAt(k) !== bytes[start + k]) return false;
  return true;
}
