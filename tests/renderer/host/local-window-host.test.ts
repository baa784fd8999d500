import { describe, expect, it } from 'vitest';
import { localWindowHost } from '../../../renderer/host/local-window-host';

type Call = { readonly address: string; readonly options: RequestInit };

/** A page whose server answers with `reply`, or with nothing. */
function pageAnswering(reply: unknown) {
  const calls: Call[] = [];
  const page = {
    location: { host: '127.0.0.1:1' },
    fetch: (address: string, options: RequestInit) => {
      calls.push({ address, options });
      if (reply === undefined) return Promise.reject(new TypeError('Failed to fetch'));
      return Promise.resolve(new Response(JSON.stringify(reply)));
    },
  };
  return { page: page as unknown as Window, calls };
}

describe('localWindowHost', () => {
  it('posts JSON to the same origin', async () => {
    const { page, calls } = pageAnswering({ ok: true, value: { token: 't', name: 'a.diewright.json' } });
    const request = { token: null, suggestedName: 'a.diewright.json', text: '{}', replaceChanged: false };
    expect(await localWindowHost(page).saveJob(request)).toEqual({
      ok: true,
      value: { token: 't', name: 'a.diewright.json' },
    });
    expect(calls[0]?.address).toBe('/host/save-job');
    expect(calls[0]?.options).toMatchObject({ method: 'POST', credentials: 'same-origin' });
    expect(JSON.parse(calls[0]?.options.body as string)).toEqual(request);
  });

  it('turns a file on the wire into bytes', async () => {
    // RFC 4648, section 10: "foobar" is Zm9vYmFy in base64.
    const { page } = pageAnswering({
      ok: true,
      value: { name: 'a.dxf', token: null, bytesBase64: 'Zm9vYmFy' },
    });
    const reply = await localWindowHost(page).openedAtStart();
    expect(reply?.ok && new TextDecoder().decode(reply.value.bytes)).toBe('foobar');
  });

  it('knows that nothing was opened at the start', async () => {
    expect(await localWindowHost(pageAnswering(null).page).openedAtStart()).toBeNull();
  });

  it('says so when the server has gone', async () => {
    const { page } = pageAnswering(undefined);
    const reply = await localWindowHost(page).exportFiles({ folderName: 'a', files: [] });
    expect(reply).toMatchObject({ ok: false, problem: { code: 'host-gone' } });
  });
});
