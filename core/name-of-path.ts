/** The name of a place in a file of ours as a person counts, from 1: `rows[2].passes[1].rate`; `whole` for the file itself. */
export function nameOfPath(path: readonly PropertyKey[], whole: string): string {
  const name = path.reduce<string>(
    (said, step) =>
      typeof step === 'number' ? `${said}[${step + 1}]` : `${said}${said && '.'}${String(step)}`,
    '',
  );
  return name === '' ? whole : name;
}
