import { clipperLib } from './clipper-lib';
import { clipper2Wasm } from './clipper2-wasm';
import { jscad } from './jscad';
import { jsts } from './jsts';
import { makerjs } from './makerjs';
import { ownOffset } from './own-offset';
import type { Peer } from './peer';

export const peers: readonly Peer[] = [clipper2Wasm, jsts, clipperLib, jscad, makerjs];

export function peerOf(name: string): Peer {
  const found = [ownOffset, ...peers].find((peer) => peer.name === name);
  if (!found) throw new Error(`No library ${name}`);
  return found;
}
