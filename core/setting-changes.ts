import type { Job } from './job';

/** A value of the job that two revisions have differently. */
export interface SettingChange {
  /** e.g. "wire diameter". */
  readonly name: string;
  readonly before: string;
  readonly after: string;
}

/** Values that differ, in the order of the job; the drawing, what was settled and what was measured are looked at elsewhere. */
export function settingChanges(before: Job, after: Job): readonly SettingChange[] {
  const [was, is] = [leavesOf(settingsOf(before)), leavesOf(settingsOf(after))];
  const names = [...new Set([...was.keys(), ...is.keys()])];
  return names.flatMap((name) => {
    const change = { name, before: was.get(name) ?? 'none', after: is.get(name) ?? 'none' };
    return change.before === change.after ? [] : [change];
  });
}

function settingsOf({
  format,
  version,
  name,
  drawing,
  settled,
  inspection,
  sheet,
  ...settings
}: Job): object {
  return settings;
}

/** Every value by its path in words, lists counted from 1. */
function leavesOf(value: unknown, path = ''): ReadonlyMap<string, string> {
  if (typeof value !== 'object' || value === null) {
    return new Map([[path, typeof value === 'string' ? value : JSON.stringify(value)]]);
  }
  return new Map(
    Object.entries(value).flatMap(([key, inner]) => {
      const word = Array.isArray(value) ? String(Number(key) + 1) : inWords(key);
      return [...leavesOf(inner, path === '' ? word : `${path} ${word}`)];
    }),
  );
}

/** `holeDiameter` → "hole diameter". */
const inWords = (key: string): string => key.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
