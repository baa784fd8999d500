/** A function that keeps its last result and gives it again while its arguments are the same values. */
export function remember<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  return rememberMany(compute, 1);
}

/** A function that keeps its last results, at most so many, the one longest unused going first. */
export function rememberMany<A extends readonly unknown[], R>(
  compute: (...args: A) => R,
  most: number,
): (...args: A) => R {
  const kept: { args: A; result: R }[] = [];
  return (...args) => {
    const found = kept.findIndex((entry) => entry.args.every((value, k) => isSame(value, args[k])));
    const entry =
      found >= 0 ? (kept.splice(found, 1)[0] as (typeof kept)[number]) : { args, result: compute(...args) };
    kept.unshift(entry);
    if (kept.length > most) kept.pop();
    return entry.result;
  };
}

/** The same value, or small plain data that reads the same: settings are copied on every edit, drawings are not. */
function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length > settingsSize || keys.length !== Object.keys(b).length) return false;
  return keys.every((key) =>
    isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}

/** Objects with more fields than this are compared by identity alone. */
const settingsSize = 16;
