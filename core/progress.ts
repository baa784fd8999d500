/** Says what is being worked on and how much of the whole is done, 0 to 1. */
export type Progress = (step: string, fraction: number) => void;
