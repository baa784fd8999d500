/** The one thing that core needs of its surroundings and ES2023 does not name: every browser and Node have it. */
declare class TextDecoder {
  constructor(encoding: string);
  decode(bytes: Uint8Array): string;
}
