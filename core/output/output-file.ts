/** A file to be written: its name (no folder) and its whole text. */
export interface OutputFile {
  readonly name: string;
  readonly text: string;
}
