import { request } from 'node:http';

export interface HttpReply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  readonly body: string;
}

/** One request with exactly these headers: `fetch` would not let Host and Origin be set. */
export function httpCall(
  origin: string,
  path: string,
  options: { method?: string; headers?: Record<string, string>; body?: string | Buffer } = {},
): Promise<HttpReply> {
  const { hostname, port } = new URL(origin);
  return new Promise((resolve, reject) => {
    const sent = request(
      { hostname, port, path, method: options.method ?? 'GET', headers: options.headers, agent: false },
      (response) => {
        const chunks: Buffer[] = [];
        response.on('data', (chunk: Buffer) => chunks.push(chunk));
        response.on('end', () =>
          resolve({
            status: response.statusCode ?? 0,
            headers: response.headers,
            body: Buffer.concat(chunks).toString('utf8'),
          }),
        );
      },
    );
    sent.once('error', reject);
    sent.end(options.body);
  });
}
