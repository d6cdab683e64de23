/** A folder as a host of static pages gives it, on the loopback alone. */
import { createReadStream, existsSync, statSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';

const KINDS: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.gif': 'image/gif',
  '.woff2': 'font/woff2',
};

export class ServedFolder {
  readonly address: string;
  private readonly server: Server;

  private constructor(server: Server) {
    this.server = server;
    this.address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  }

  /** @param under the path that the folder has on its host */
  static start(folder: string, under = ''): Promise<ServedFolder> {
    const server = createServer(({ url = '/' }, response) => {
      const { pathname } = new URL(url, 'http://127.0.0.1');
      const name = decodeURIComponent(pathname).slice(under.length);
      const file = path.join(folder, name.endsWith('/') ? `${name}index.html` : name);
      if (
        !pathname.startsWith(under) ||
        !file.startsWith(folder) ||
        !existsSync(file) ||
        statSync(file).isDirectory()
      ) {
        response.writeHead(404).end();
        return;
      }
      response.writeHead(200, { 'content-type': KINDS[path.extname(file)] ?? 'text/plain' });
      createReadStream(file).pipe(response);
    });
    return new Promise((settle) => server.listen(0, '127.0.0.1', () => settle(new ServedFolder(server))));
  }

  stop(): void {
    this.server.close();
    this.server.closeAllConnections();
  }
}
