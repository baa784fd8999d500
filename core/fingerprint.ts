import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/**
 * The first 128 bits of the SHA-256 (FIPS 180-4) of bytes or of a text in UTF-8, as 32 hexadecimal digits: enough that two
 * different files never have the same by chance, and short enough to stand in a program's comment.
 */
export function fingerprint(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content)).slice(0, 32);
}
