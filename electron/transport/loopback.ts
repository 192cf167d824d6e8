import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Answer, ErrorCode } from '../../core/contract/errors.ts';
import type { RequestHandler } from '../../core/contract/message.ts';
import { pageFile, SECURITY_HEADERS } from './page.ts';

export const TOKEN_HEADER = 'x-studbook-token';
/** Who is signed in at the window; the token above only says that it is a window of this start. */
export const SESSION_HEADER = 'x-studbook-session';

/** The longest body the contract allows is an imported file of 45 MB in base64. */
const BODY_LIMIT_BYTES = 64 * 1024 * 1024;

const REQUEST_PATH = '/request/';

export interface LoopbackOptions {
  readonly service: RequestHandler;
  /** Folder of the built window. */
  readonly pageFolder: string;
  /** 0 takes any free port. */
  readonly port?: number;
  readonly token?: string;
  readonly bodyLimitBytes?: number;
  /** Called with what a person at the printed log should know; never with request contents. */
  readonly log?: (line: string) => void;
}

export interface Loopback {
  /** http://127.0.0.1:port, the only origin that is answered. */
  readonly origin: string;
  readonly token: string;
  /** Address to open: the token stands in the fragment, which no browser sends or logs. */
  readonly address: string;
  /** Lets requests under way finish, then stops listening. */
  close(): Promise<void>;
}

/** Serves the built window and the request map to this machine alone. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const token = options.token ?? randomBytes(32).toString('base64url');
  const expected = digest(token);
  const limit = options.bodyLimitBytes ?? BODY_LIMIT_BYTES;
  const log = options.log ?? (() => {});
  let host = '';
  let underWay = 0;
  let closing = false;

  const server = createServer({ requestTimeout: 120_000 }, (request, response) => {
    underWay += 1;
    response.on('close', () => {
      underWay -= 1;
      endConnections();
    });
    answer(request, response).catch((error: unknown) => {
      log(`Loopback: ${error instanceof Error ? error.message : String(error)}`);
      if (response.headersSent) response.destroy();
      else refuse(response, 500, 'internal', 'The request could not be answered; the log has the reason.');
    });
  });

  // A browser keeps spare connections open that have carried nothing yet; they would hold the closing up for minutes.
  function endConnections(): void {
    if (closing && underWay === 0) server.closeAllConnections();
  }

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    // A name that merely resolves to 127.0.0.1 would let a foreign page reach the register as its own origin.
    if (request.headers.host !== host) {
      return refuse(response, 403, 'refused', `Only http://${host} is answered here.`);
    }
    const origin = request.headers.origin;
    if (origin !== undefined && origin !== `http://${host}`) {
      return refuse(response, 403, 'refused', 'A page of another origin may not call this service.');
    }
    const pathname = /^[^?#]*/.exec(request.url ?? '/')?.[0] ?? '/';
    if (pathname.startsWith(REQUEST_PATH)) await answerRequest(request, response, pathname);
    else await answerPage(request, response, pathname);
  }

  async function answerPage(request: IncomingMessage, response: ServerResponse, pathname: string) {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.setHeader('allow', 'GET, HEAD');
      return refuse(response, 405, 'invalid_input', 'The window is read with GET.');
    }
    const file = await pageFile(options.pageFolder, pathname);
    if (file === null) return refuse(response, 404, 'not_found', 'There is no such file in the window.');
    response.writeHead(200, {
      ...SECURITY_HEADERS,
      'content-type': file.contentType,
      'content-length': file.body.byteLength,
    });
    response.end(request.method === 'HEAD' ? undefined : file.body);
  }

  async function answerRequest(request: IncomingMessage, response: ServerResponse, pathname: string) {
    if (request.method !== 'POST') {
      response.setHeader('allow', 'POST');
      return refuse(response, 405, 'invalid_input', 'Requests are sent with POST.');
    }
    if (request.headers.origin === undefined) {
      return refuse(response, 403, 'refused', 'Requests must come from the window, which names its origin.');
    }
    const given = request.headers[TOKEN_HEADER];
    if (typeof given !== 'string' || !timingSafeEqual(digest(given), expected)) {
      return refuse(
        response,
        401,
        'refused',
        `The header ${TOKEN_HEADER} must carry the token of this start.`,
      );
    }
    if (!/^application\/json(;|$)/.test(request.headers['content-type'] ?? '')) {
      return refuse(response, 415, 'invalid_input', 'The body must be application/json.');
    }
    const body = await readBody(request, limit);
    if (body === null) {
      response.setHeader('connection', 'close');
      return refuse(
        response,
        413,
        'invalid_input',
        `The request is larger than ${limit} bytes, the most that is allowed.`,
      );
    }
    let input: unknown;
    try {
      input = JSON.parse(body);
    } catch {
      return refuse(response, 400, 'invalid_input', 'The body is not JSON text.');
    }
    const session = request.headers[SESSION_HEADER];
    const name = pathname.slice(REQUEST_PATH.length);
    send(
      response,
      200,
      await options.service.handle(name, input, typeof session === 'string' ? session : null),
    );
  }

  const port = await listen(server, options.port ?? 0);
  host = `127.0.0.1:${port}`;
  return {
    origin: `http://${host}`,
    token,
    address: `http://${host}/#token=${token}`,
    close: () =>
      new Promise((resolve, reject) => {
        closing = true;
        server.close((error) => (error === undefined ? resolve() : reject(error)));
        endConnections();
      }),
  };
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

/** The whole body as text, or null when it is too large; the rest is then read and dropped so that the answer arrives. */
async function readBody(request: IncomingMessage, limit: number): Promise<string | null> {
  if (Number(request.headers['content-length'] ?? 0) > limit) {
    request.resume();
    return null;
  }
  const chunks: Buffer[] = [];
  let size = 0;
  for await (const chunk of request as AsyncIterable<Buffer>) {
    size += chunk.byteLength;
    if (size <= limit) chunks.push(chunk);
    else chunks.length = 0;
  }
  return size > limit ? null : Buffer.concat(chunks).toString('utf8');
}

// Both sides are hashed first: equal lengths for the comparison, and no hint of the token's length.
function digest(text: string): Buffer {
  return createHash('sha256').update(text).digest();
}

function refuse(response: ServerResponse, status: number, code: ErrorCode, message: string): void {
  send(response, status, { ok: false, error: { code, message, details: [] } });
}

function send(response: ServerResponse, status: number, answer: Answer<unknown>): void {
  const body = Buffer.from(JSON.stringify(answer), 'utf8');
  response.writeHead(status, {
    ...SECURITY_HEADERS,
    'content-type': 'application/json; charset=utf-8',
    'content-length': body.byteLength,
  });
  response.end(body);
}
