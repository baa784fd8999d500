import { protocol } from 'electron';
import { pageFile } from '../services/page-file';
import { pageHeaders } from '../services/page-policy';
import { isPageAddress, pageScheme } from './page-address';

/** Has to be called before the shell is ready. */
export function registerPageScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ]);
}

/** Answers app:// addresses from the folder of the built page, with the content security policy on every answer. */
export function servePage(pageFolder: string): void {
  protocol.handle(pageScheme, (request) => pageResponse(request, pageFolder));
}

export async function pageResponse(request: Request, pageFolder: string): Promise<Response> {
  if (request.method !== 'GET' || !isPageAddress(request.url)) return new Response(null, { status: 403 });
  const file = await pageFile(pageFolder, new URL(request.url).pathname);
  if (!file) return new Response(null, { status: 404 });
  return new Response(new Uint8Array(file.bytes), {
    headers: { ...pageHeaders, 'content-type': file.contentType },
  });
}
