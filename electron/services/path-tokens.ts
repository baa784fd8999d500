import { randomBytes } from 'node:crypto';

/** Paths that the page may write to, each known to it only by a random token. */
export interface PathTokens {
  tokenFor(path: string): string;
  /** Null for a token that was never given. */
  pathOf(token: string): string | null;
}

/** The same path always has the same token; tokens are 128 random bits and end with the program. */
export function createPathTokens(): PathTokens {
  const pathByToken = new Map<string, string>();
  const tokenByPath = new Map<string, string>();
  return {
    tokenFor(path) {
      const known = tokenByPath.get(path);
      if (known !== undefined) return known;
      const token = randomBytes(16).toString('hex');
      tokenByPath.set(path, token);
      pathByToken.set(token, path);
      return token;
    },
    pathOf: (token) => pathByToken.get(token) ?? null,
  };
}
