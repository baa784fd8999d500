import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { hostMetaName, localWindowCalls, type LocalWindowCall } from '../contract/local-window-protocol';
import { pageFile } from '../services/page-file';
import { pageHeaders } from '../services/page-policy';
import { createHostCalls, type HostCalls } from './host-calls';
import { readJsonBody } from './read-json-body';
import { createRequestGuard, type RequestGuard } from './request-guard';

export interface LocalWindowOptions {
  /** The folder of the built page. */
  readonly pageFolder: string;
  /** All that the page saves goes into this folder. */
  readonly outFolder: string;
  /** Unsaved work is kept in this folder. */
  readonly draftFolder: string;
  /** The drawing or job the program was started with. */
  readonly openPath: string | null;
  /** Called once, when the one-time token has been used. */
  readonly onOpened?: () => void;
  readonly largestBody?: number;
  /** How long a request may take to arrive whole, ms. */
  readonly patience?: number;
}

/** The largest body comes through memory, not over a line: half a minute is for a machine that is busy. */
const usualPatience = 30_000;
/** A browser opens six at a time; anything beyond is not our page. */
const mostConnections = 64;

export interface LocalWindow {
  /** Opens the window once; the token in it is then used up. */
  readonly address: string;
  readonly origin: string;
  close(): Promise<void>;
}

/**
 * Serves the built page and the host interface on 127.0.0.1 at a free port, to one browser: the first that comes with
 * the one-time token gets a cookie for it, and nothing is answered without that cookie.
 */
export async function serveLocalWindow(options: LocalWindowOptions): Promise<LocalWindow> {
  const { patience = usualPatience } = options;
  const server = createServer({
    headersTimeout: patience,
    requestTimeout: patience,
    connectionsCheckingInterval: Math.min(1000, patience),
  });
  server.maxConnections = mostConnections;
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  const guard = createRequestGuard(port);
  const calls = createHostCalls(options.outFolder, options.openPath, options.draftFolder);

  server.on('request', (request, response) => {
    answer(request, response, guard, calls, options).catch((error: unknown) => {
      // Whoever has gone hears no answer.
      if (request.destroyed && !request.complete) return;
      console.error(error);
      if (!response.headersSent) refuse(response, 500, 'server-bug', 'The program made a mistake.');
      else response.destroy();
    });
  });

  return {
    address: `${guard.origin}/?token=${guard.token}`,
    origin: guard.origin,
    close: () => closeServer(server),
  };
}

async function answer(
  request: IncomingMessage,
  response: ServerResponse,
  guard: RequestGuard,
  calls: HostCalls,
  options: LocalWindowOptions,
): Promise<void> {
  if (!guard.comesFromHere(request)) {
    return refuse(response, 403, 'foreign-request', 'This request comes from another page.');
  }
  // Put behind the origin, not resolved against it: "//name/" would be another server's address.
  const path = request.url?.startsWith('/') ? request.url : '/';
  const url = new URL(`${guard.origin}${path}`);

  const token = url.pathname === '/' ? url.searchParams.get('token') : null;
  if (request.method === 'GET' && token !== null) {
    const cookie = guard.exchange(token);
    if (cookie !== null) {
      response.writeHead(303, { location: '/', 'set-cookie': cookie, 'cache-control': 'no-store' }).end();
      options.onOpened?.();
      return;
    }
    // A reload of the first address in the same window is no foreigner.
    if (guard.hasCookie(request)) return void response.writeHead(303, { location: '/' }).end();
  }
  if (!guard.hasCookie(request)) {
    return refuse(response, 403, 'no-token', 'This address is used up or not complete.');
  }

  if (request.method === 'GET') return sendPage(url.pathname, response, options.pageFolder);
  if (request.method !== 'POST') {
    return refuse(response, 405, 'method', 'Only GET and POST are answered.');
  }
  const call = (Object.keys(localWindowCalls) as LocalWindowCall[]).find(
    (name) => localWindowCalls[name] === url.pathname,
  );
  if (!call) return refuse(response, 404, 'no-such-call', 'There is no such call.');

  const body = await readJsonBody(request, options.largestBody);
  if (!body.ok) {
    return refuse(
      response,
      body.problem.code === 'body-too-large' ? 413 : 400,
      body.problem.code,
      body.problem.what,
    );
  }
  sendJson(response, 200, await calls[call](body.value));
}

async function sendPage(path: string, response: ServerResponse, pageFolder: string): Promise<void> {
  const file = await pageFile(pageFolder, path);
  if (!file) return refuse(response, 404, 'no-such-file', 'The page has no such file.');
  const isPage = file.contentType.startsWith('text/html');
  const content = isPage ? withHostMark(Buffer.from(file.bytes).toString('utf8')) : file.bytes;
  response.writeHead(200, { ...pageHeaders, 'content-type': file.contentType }).end(content);
}

/** Tells the page which host it has. */
const withHostMark = (html: string): string =>
  html.replace(/<head[^>]*>/i, (head) => `${head}<meta name="${hostMetaName}" content="local window" />`);

function refuse(response: ServerResponse, status: number, code: string, what: string): void {
  const whatToDo = 'Start the program again and use the address it prints.';
  // The rest of a body that is not wanted is not waited for.
  if (status === 413 || status === 403) response.setHeader('connection', 'close');
  sendJson(response, status, { ok: false, problem: { code, what, where: '', whatToDo } });
}

function sendJson(response: ServerResponse, status: number, value: unknown): void {
  response
    .writeHead(status, {
      'content-type': 'application/json; charset=utf-8',
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    })
    .end(JSON.stringify(value));
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeAllConnections();
  });
}
