import type { IncomingMessage } from 'node:http';
import { done, failed, type Result } from '../../core/problem';
import { largestCallBytes } from '../contract/local-window-protocol';

/** The JSON body of a call; stops reading as soon as it is longer than the limit. */
export async function readJsonBody(
  request: IncomingMessage,
  limit = largestCallBytes,
): Promise<Result<unknown>> {
  if (!/^application\/json\b/i.test(request.headers['content-type'] ?? '')) {
    return failed('body-form', 'The body is not JSON', 'content-type', 'Start the program again.');
  }
  const tooLarge = failed('body-too-large', 'The body is too large', '', 'Use a smaller drawing.');
  if (Number(request.headers['content-length'] ?? 0) > limit) return tooLarge;

  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    length += chunk.length;
    if (length > limit) return tooLarge;
    chunks.push(chunk);
  }
  try {
    return done(JSON.parse(Buffer.concat(chunks).toString('utf8')) as unknown);
  } catch {
    return failed('body-form', 'The body is not JSON', '', 'Start the program again.');
  }
}
