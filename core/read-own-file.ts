import { findNodeAtLocation, getNodeValue, parseTree, type Node, type ParseError } from 'jsonc-parser';
import { z } from 'zod';
import { nameOfPath } from './name-of-path';
import { done, failed, type Result } from './problem';
import { sayIssue } from './say-issue';

/** A kind of file of ours that a person may also write by hand: JSON with comments. */
export interface OwnFileKind<T> {
  /** Begins the codes of its problems. */
  readonly code: string;
  /** As it reads in a sentence: "technology table". */
  readonly noun: string;
  readonly format: string;
  readonly version: number;
  readonly ending: string;
  /** What stands in it beside format and version. */
  readonly schema: z.ZodType<T>;
}

/**
 * The parser calls itself for every level: a file of nothing but brackets would exhaust it. Ours have a few levels;
 * brackets in texts and comments are counted with them, which this leaves room for.
 */
const deepest = 200;

/**
 * Reads a file of ours. One that is not whole, of another kind, newer, or with a wrong field gets its sentence, with
 * the line where it is wrong.
 */
export function readOwnFile<T>(text: string, kind: OwnFileKind<T>): Result<T> {
  const source = text.replace(/^\u{feff}/u, '');
  const errors: ParseError[] = [];
  // An empty file has no tree and no error.
  const tree = isTooDeep(source) ? undefined : parseTree(source, errors, { allowTrailingComma: true });
  const [error] = errors;
  if (!tree || error) {
    return failed(
      `${kind.code}-not-json`,
      `The ${kind.noun} cannot be read: it is not whole, or a sign is missing or too many`,
      `line ${lineAt(source, error?.offset ?? 0)}`,
      'Correct the line, or open another copy.',
    );
  }
  const value: unknown = getNodeValue(tree);
  const head = z
    .looseObject({ format: z.literal(kind.format), version: z.int().positive() })
    .safeParse(value);
  if (!head.success) {
    return failed(
      `${kind.code}-not-ours`,
      `This is not a Diewright ${kind.noun}`,
      '',
      `Choose a file that ends in ${kind.ending}.`,
    );
  }
  const { format: _format, version, ...content } = head.data;
  if (version > kind.version) {
    return failed(
      `${kind.code}-newer`,
      `The ${kind.noun} was saved by a newer Diewright (version ${version}, this one reads ${kind.version})`,
      '',
      'Open it with the newer program.',
    );
  }
  const parsed = kind.schema.safeParse(content, { reportInput: true });
  if (parsed.success) return done(parsed.data);
  const [issue] = parsed.error.issues;
  const path = issue?.path ?? [];
  return failed(
    `${kind.code}-field`,
    `The ${kind.noun} has a value that cannot be used: ${nameOfPath(path, 'the file')} ${issue ? sayIssue(issue) : 'is wrong'}`,
    `line ${lineAt(source, offsetOf(tree, path))}`,
    'Correct it there, or open another copy.',
  );
}

/** Whether a text has more brackets within brackets than any file of ours. */
export function isTooDeep(text: string): boolean {
  let depth = 0;
  for (const [bracket] of text.matchAll(/[[\]{}]/g)) {
    depth += bracket === '[' || bracket === '{' ? 1 : -1;
    if (depth > deepest) return true;
  }
  return false;
}

/** Where a value stands, or, where it is missing, what it should stand in. */
function offsetOf(tree: Node, path: readonly PropertyKey[]): number {
  for (let length = path.length; length > 0; length -= 1) {
    const node = findNodeAtLocation(tree, path.slice(0, length) as (string | number)[]);
    if (node) return node.offset;
  }
  return tree.offset;
}

const lineAt = (text: string, offset: number): number => text.slice(0, offset).split(/\r\n|\r|\n/).length;
