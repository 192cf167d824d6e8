import { readFile, realpath } from 'node:fs/promises';
import { extname, join, sep } from 'node:path';

/** What the window may load and call: files of its own origin and nothing else. */
export const CONTENT_SECURITY_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "connect-src 'self'",
  "font-src 'self'",
  "img-src 'self' data:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Headers of every response, whichever transport sends it. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': CONTENT_SECURITY_POLICY,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'cross-origin-embedder-policy': 'require-corp',
  'permissions-policy': 'camera=(), microphone=(), geolocation=(), usb=(), serial=(), hid=()',
  'cache-control': 'no-store',
};

const CONTENT_TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
};

export interface PageFile {
  readonly contentType: string;
  readonly body: Buffer<ArrayBuffer>;
}

/**
 * One file of the built window, or null. `pathname` is the address's path still percent-encoded. A path without a
 * file ending is a place inside the window, which its first page opens by itself.
 */
export async function pageFile(folder: string, pathname: string): Promise<PageFile | null> {
  let decoded: string;
  try {
    decoded = decodeURIComponent(pathname);
  } catch {
    return null;
  }
  // Backslash and colon name other places on Windows; a NUL byte would cut the name short.
  if (/[\\:\0]/.test(decoded) || !decoded.startsWith('/')) return null;
  const segments = decoded.split('/').slice(1);
  if (segments.some((segment) => segment.startsWith('.'))) return null;

  const ending = extname(segments.at(-1) ?? '');
  const contentType = CONTENT_TYPES[ending === '' ? '.html' : ending];
  if (contentType === undefined) return null;
  try {
    const root = await realpath(folder);
    const file = await realpath(ending === '' ? join(root, 'index.html') : join(root, ...segments));
    // After links are followed: a link may lead out of the folder although its name does not.
    if (!file.startsWith(root + sep)) return null;
    return { contentType, body: await readFile(file) };
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

function isMissing(error: unknown): boolean {
  const code = (error as NodeJS.ErrnoException).code;
  return code === 'ENOENT' || code === 'ENOTDIR' || code === 'EISDIR' || code === 'ENAMETOOLONG';
}
