/** Names that Windows keeps for devices, with any ending (Microsoft Learn, "Naming Files, Paths, and Namespaces"). */
const deviceNames = /^(con|prn|aux|nul|com[0-9¹²³]|lpt[0-9¹²³])(\.|$)/i;

/** Characters that Windows does not allow in names, and `/` (same source). */
const forbiddenCharacters = /[\u0000-\u001f<>:"/\\|?*]/;

/**
 * What is wrong with a file or folder name that has to work on every system and must not lead out of its folder, as a
 * sentence without its full stop; null where nothing is.
 */
export function fileNameTrouble(name: string): string | null {
  if (name === '' || name === '.' || name === '..') return 'The name is empty';
  if (forbiddenCharacters.test(name)) return 'The name holds a character that file names may not hold';
  if (/[. ]$/.test(name) || name.startsWith(' '))
    return 'The name begins or ends with a space or ends with a full stop';
  if (deviceNames.test(name)) return 'Windows keeps this name for a device';
  if (Buffer.byteLength(name) > 200) return 'The name is longer than 200 bytes';
  return null;
}

/** The name with every character replaced that would be trouble: "a/b:c" becomes "a-b-c", "" becomes `fallback`. */
export function cleanFileName(name: string, fallback: string): string {
  const replaced = name
    .replace(new RegExp(forbiddenCharacters, 'g'), '-')
    .replace(/^ +|[. ]+$/g, '')
    .slice(0, 60);
  const trimmed = replaced.replace(/[. ]+$/g, '');
  return fileNameTrouble(trimmed) === null ? trimmed : fallback;
}
