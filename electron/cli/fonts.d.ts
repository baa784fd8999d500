/** The bundler puts a font's bytes into the program. */
declare module '*.ttf' {
  const bytes: Uint8Array;
  export = bytes;
}
