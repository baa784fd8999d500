/** A file to be written: its name (no folder) and its whole content. */
export interface OutputFile {
  readonly name: string;
  readonly text: string;
  /** The text is no text but bytes, one character a byte (a PDF). */
  readonly isBytes?: boolean | undefined;
}
