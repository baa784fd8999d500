/** What has to be said wherever figures or paths leave the program: window, README, summary, every sheet and program. */
export const cautions = [
  "Check every path by dry run and by the machine's own graphics before cutting.",
  'Press tools can maim: guarding and set-up by trained people under the local code (in the USA 29 CFR 1910.217).',
  'Force and clearance figures are starting values, to be settled by the responsible tool engineer.',
] as const;

/** Stands on everything that is written while findings of weight stop or decide are open. */
export const draftMark = 'DRAFT - findings open - do not cut';
