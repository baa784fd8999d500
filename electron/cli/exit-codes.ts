/** What the command tells the shell that called it. 70 is the code sysexits.h gives to a program's own mistake. */
export const exitCodes = { released: 0, inputError: 1, draft: 2, bug: 70 } as const;

export type ExitCode = (typeof exitCodes)[keyof typeof exitCodes];
