// What stands before the VS Code server: it lets through what comes from the server's own pages, under its own name.
// A page elsewhere can send requests to this machine, and can give itself a name that leads here; the server itself would
// take both.
import http from 'node:http';
import net from 'node:net';

const LOOPBACK = '127.0.0.1';

/** Whether the request names this server, and comes from none but its pages or from no page at all. */
function mayPass({ headers: { host, origin } }, port) {
  const names = [LOOPBACK, 'localhost'].map((name) => `${name}:${port}`);
  return names.includes(host) && (origin === undefined || names.some((name) => origin === `http://${name}`));
}

function forward(socketPath, request, response) {
  const { method, url, headers } = request;
  const inner = http.request({ socketPath, method, path: url, headers }, (answer) => {
    response.writeHead(answer.statusCode, answer.rawHeaders);
    answer.pipe(response);
  });
  inner.once('error', () => response.destroy());
  response.once('close', () => inner.destroy());
  request.pipe(inner);
}

/** A connection that goes on in a protocol of its own: it is joined to one with the server, from its first byte. */
function join(socketPath, { method, url, rawHeaders }, socket, head) {
  const inner = net.connect(socketPath);
  const lines = rawHeaders.flatMap((name, i) => (i % 2 === 0 ? [`${name}: ${rawHeaders[i + 1]}`] : []));
  inner.write(`${[`${method} ${url} HTTP/1.1`, ...lines].join('\r\n')}\r\n\r\n`);
  inner.write(head);
  for (const [one, other] of [
    [inner, socket],
    [socket, inner],
  ]) {
    one.pipe(other);
    one.once('error', () => other.destroy());
    one.once('close', () => other.destroy());
  }
}

/**
 * @param socketPath where the server listens, in a folder that others on this machine cannot look into
 * @param port 0 takes one that is free
 */
export async function openGate(socketPath, port) {
  const gate = http.createServer();
  const isOurs = (request) => mayPass(request, gate.address().port);
  gate.on('request', (request, response) => {
    if (isOurs(request)) forward(socketPath, request, response);
    else response.writeHead(403, { Connection: 'close' }).end();
  });
  gate.on('upgrade', (request, socket, head) => {
    if (isOurs(request)) join(socketPath, request, socket, head);
    else socket.end('HTTP/1.1 403 Forbidden\r\nConnection: close\r\n\r\n');
  });
  await new Promise((resolve, reject) => gate.once('error', reject).listen(port, LOOPBACK, resolve));
  return {
    port: gate.address().port,
    close() {
      gate.close();
      gate.closeAllConnections();
    },
  };
}
