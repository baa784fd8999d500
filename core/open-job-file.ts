import { getNodeValue, parseTree, type Node, type ParseError } from 'jsonc-parser';
import { z } from 'zod';
import { jobFormat, jobSchema, jobVersion, newJob, type Job } from './job';
import { readJobFile } from './job-file';
import { nameOfPath } from './name-of-path';
import { done, type Result } from './problem';
import { isTooDeep } from './read-own-file';
import { sayIssue } from './say-issue';

/** A job file as far as it can be trusted. */
export interface OpenedJob {
  readonly job: Job;
  /** What could not be used and what stands in its place, a sentence each; none for a file that is whole. */
  readonly dropped: readonly string[];
  /** Saved by a newer program: what this one does not know is missing, so the file must not be written over. */
  readonly isNewer: boolean;
}

/**
 * Opens a job file even where it is damaged or newer: a value that cannot be used gives way to the one a new job has,
 * or is left out of its list, and each is said. The drawing itself must be whole, or there is no job. Files that are
 * no job files get the sentences of `readJobFile`.
 */
export function openJobFile(text: string): Result<OpenedJob> {
  const whole = readJobFile(text);
  if (whole.ok) return done({ job: whole.value, dropped: [], isNewer: false });
  const found = trustedValue(text);
  const head = headSchema.safeParse(found);
  if (!head.success) return whole;
  const isNewer = head.data.version > jobVersion;
  const dropped: string[] = [];
  if (!isNewer && !isJson(text))
    dropped.push('The file breaks off or has a wrong sign; what follows is lost');
  const job = mended({ ...head.data, version: jobVersion }, dropped);
  return job ? done({ job, dropped, isNewer }) : whole;
}

const headSchema = z.looseObject({
  format: z.literal(jobFormat),
  version: z.int().positive(),
  drawing: z.looseObject({ fileName: z.string(), content: z.string().min(1) }),
});

/** Rounds of mending: every round takes out all that the schema names, and few need a second. */
const mostRounds = 20;

/** A value that the schema takes, what it refused replaced from a new job or removed; null where that does not help. */
function mended(value: z.infer<typeof headSchema>, dropped: string[]): Job | null {
  // A copy: what is put in must not be shared with the tables that all jobs share.
  const model: unknown = JSON.parse(JSON.stringify(newJob(value.drawing.fileName, '')));
  for (let round = 0; round < mostRounds; round++) {
    const parsed = jobSchema.safeParse(value, { reportInput: true });
    if (parsed.success) return parsed.data;
    const loose = new Map<string, readonly PropertyKey[]>();
    const leaveOut = (path: readonly PropertyKey[]): unknown => loose.set(JSON.stringify(path), path);
    for (const issue of parsed.error.issues) {
      const said = `${nameOfPath(issue.path, 'the file')} ${sayIssue(issue)}`;
      const instead = valueAt(model, issue.path);
      if (issue.code === 'unrecognized_keys') {
        for (const key of issue.keys) leaveOut([...issue.path, key]);
        dropped.push(`${said}; it is left out`);
      } else if (instead !== undefined) {
        put(value, issue.path, instead);
        dropped.push(`${said}; ${short(instead)} is used instead`);
      } else {
        // What lacks a part that no new job has goes as a whole.
        const path = issue.path.slice(0, valueAt(value, issue.path) === undefined ? -1 : undefined);
        leaveOut(path);
        dropped.push(`${said}; ${nameOfPath(path, 'all')} is left out`);
      }
    }
    // The last entry of a list first, so that taking one out moves none that is still to go.
    for (const path of [...loose.values()].reverse()) remove(value, path);
  }
  return null;
}

/** The file's value, as far as it reads; undefined where the damage lies before the end of the drawing. */
function trustedValue(text: string): unknown {
  if (isTooDeep(text)) return undefined;
  const errors: ParseError[] = [];
  const tree = parseTree(text, errors, { allowTrailingComma: true });
  if (!tree) return undefined;
  const drawing = tree.children?.find(({ children }) => children?.[0]?.value === 'drawing')?.children?.[1];
  const endOfDrawing = drawing ? drawing.offset + drawing.length : Infinity;
  if (errors.some(({ offset }) => offset <= endOfDrawing)) return undefined;
  return getNodeValue(withoutLoose(tree));
}

/** The tree without names whose value is missing, which a file that breaks off ends with. */
function withoutLoose(node: Node): Node {
  const children = node.children
    ?.filter(({ type, children: own }) => type !== 'property' || own?.length === 2)
    .map(withoutLoose);
  return children ? { ...node, children } : node;
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

const isGroup = (value: unknown): value is Record<PropertyKey, unknown> =>
  typeof value === 'object' && value !== null;

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((at, step) => (isGroup(at) && Object.hasOwn(at, step) ? at[step] : undefined), value);

function put(value: unknown, path: readonly PropertyKey[], instead: unknown): void {
  const group = valueAt(value, path.slice(0, -1));
  const last = path.at(-1);
  if (isGroup(group) && last !== undefined) group[last] = instead;
}

function remove(value: unknown, path: readonly PropertyKey[]): void {
  const group = valueAt(value, path.slice(0, -1));
  const last = path.at(-1);
  if (Array.isArray(group)) group.splice(Number(last), 1);
  else if (isGroup(group) && last !== undefined) Reflect.deleteProperty(group, last);
}

function short(value: unknown): string {
  const text = JSON.stringify(value);
  return text.length <= 40 ? text : 'what a new job has';
}
