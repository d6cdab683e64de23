/** The server that `npm start` opens the editor with: for this machine's user alone, and for no page but its own. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import http from 'node:http';
import path from 'node:path';
import { describe, expect, inject, test } from 'vitest';

const { port, token, state } = inject('stage');
const OWN = `127.0.0.1:${port}`;
const COOKIE = { Cookie: `vscode-tkn=${token}` };

/** The status of the answer; 101 where the connection goes on as a web socket. */
function statusOf(headers: http.OutgoingHttpHeaders, address = '/'): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const request = http.request({ host: '127.0.0.1', port, path: address, headers, agent: false });
    request.once('response', ({ statusCode }) => resolve(statusCode));
    request.once('upgrade', (_, socket) => {
      socket.destroy();
      resolve(101);
    });
    request.once('error', reject).end();
  });
}

const SOCKET = {
  Connection: 'Upgrade',
  Upgrade: 'websocket',
  'Sec-WebSocket-Key': 'dGhlIHNhbXBsZSBub25jZQ==',
  'Sec-WebSocket-Version': '13',
};

describe.each([
  ['a page', {}, 200],
  ['a web socket', SOCKET, 101],
])('%s', (_, kind, taken) => {
  const ask = (headers: http.OutgoingHttpHeaders) =>
    statusOf({ ...COOKIE, ...kind, ...headers }, '/?reconnectionToken=x');

  test('is had under its own name, by its own pages', async () => {
    expect(await ask({})).toBe(taken);
    expect(await ask({ Origin: `http://${OWN}` })).toBe(taken);
    expect(await ask({ Host: `localhost:${port}` })).toBe(taken);
  });

  test.each([
    ['another name that leads here', { Host: 'outside.invalid' }],
    ['another name, with the port', { Host: `outside.invalid:${port}` }],
    ['its address without the port', { Host: '127.0.0.1' }],
    ['a page elsewhere', { Origin: 'http://outside.invalid' }],
    ['another server on this machine', { Origin: `http://127.0.0.1:${port + 1}` }],
    ['a page of no origin', { Origin: 'null' }],
    ['a page that is served more safely', { Origin: `https://${OWN}` }],
  ])('is refused to %s', async (_what, headers) => {
    expect(await ask(headers)).toBe(403);
  });
});

test('without its token it shows nothing', async () => {
  expect(await statusOf({})).toBe(403);
  expect(await statusOf({ Cookie: 'vscode-tkn=0' })).toBe(403);
  expect(await statusOf({}, `/?tkn=${token}`)).toBe(302);
});

/** The kernel's table of sockets: addresses as hexadecimal numbers, 0A where somebody listens. */
function listeners(): string[] {
  const hex = port.toString(16).toUpperCase().padStart(4, '0');
  return ['tcp', 'tcp6'].flatMap((table) =>
    readFileSync(`/proc/net/${table}`, 'utf8')
      .split('\n')
      .map((line) => line.trim().split(/\s+/))
      .flatMap(([, local = '', , kind]) => (local.endsWith(`:${hex}`) && kind === '0A' ? [local] : [])),
  );
}

test.skipIf(process.platform !== 'linux')('only the loopback reaches it', () => {
  expect(listeners()).toEqual([expect.stringMatching(/^0100007F:/)]);
});

test.skipIf(process.platform !== 'linux')('its token stands in no list of processes', () => {
  const processes = readdirSync('/proc').filter((name) => /^\d+$/.test(name));
  const telling = processes.filter((id) => {
    try {
      return readFileSync(`/proc/${id}/cmdline`, 'utf8').includes(token);
    } catch {
      // It has ended meanwhile.
      return false;
    }
  });
  expect(processes.length).toBeGreaterThan(1);
  expect(telling).toEqual([]);
});

test('its token stands in no log, and where it stands nobody else can look', () => {
  const files = readdirSync(state, { recursive: true, encoding: 'utf8' }).map((name) => path.join(state, name));
  const holding = files.filter(holds);
  expect(holding).toEqual([path.join(state, 'token')]);
  expect(statSync(path.join(state, 'token')).mode & 0o077).toBe(0);
  expect(statSync(state).mode & 0o077).toBe(0);
});

/** False for what is no file, and for one that has gone meanwhile. */
function holds(file: string): boolean {
  try {
    return statSync(file).isFile() && readFileSync(file).includes(token);
  } catch {
    return false;
  }
}
