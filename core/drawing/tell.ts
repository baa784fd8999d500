/** Is told how much of a piece of work is done, 0 to 1. */
export type Tell = (fraction: number) => void;

/** Where nobody wants to know. */
export const untold: Tell = () => undefined;
