import type { Answer, RequestError } from '../../core/contract/errors.ts';
import type { RequestName } from '../../core/contract/names.ts';
import type { RequestInput, RequestOutput, Send } from '../../core/contract/requests.ts';
import { sessionOver, sessionToken } from './session.ts';

type Carrier = (input: unknown, session: string | null) => Promise<Answer<unknown>>;

declare global {
  interface Window {
    /** Present in the desktop shell: one function per request. */
    readonly studbook?: Readonly<Record<RequestName, Carrier>>;
  }
}

const TOKEN_KEY = 'studbook.token';

/**
 * The loopback start hands its token over in the address's fragment. It is kept for this window only, so that a
 * reload works, and taken out of the address so that it is not copied along with it.
 */
function takeToken(): string {
  const handed = /^#token=([\w.~-]+)/.exec(window.location.hash)?.[1];
  if (handed === undefined) return window.sessionStorage.getItem(TOKEN_KEY) ?? '';
  window.sessionStorage.setItem(TOKEN_KEY, handed);
  window.history.replaceState(null, '', '#/');
  return handed;
}

const failed = (message: string): Answer<never> => {
  const error: RequestError = { code: 'internal', message, details: [] };
  return { ok: false, error };
};

function loopback(token: string) {
  return async (name: RequestName, input: unknown, session: string | null): Promise<Answer<unknown>> => {
    let response: Response;
    try {
      response = await fetch(`/request/${name}`, {
        method: 'POST',
        headers: {
          'content-type': 'application/json',
          'x-studbook-token': token,
          ...(session === null ? {} : { 'x-studbook-session': session }),
        },
        body: JSON.stringify(input),
      });
    } catch {
      return failed('The register does not answer: its service has stopped. Start Studbook again.');
    }
    if (!response.headers.get('content-type')?.includes('application/json')) {
      return failed(
        `The register refused this window (${response.status}). Open the address that the start of Studbook printed.`,
      );
    }
    return (await response.json()) as Answer<unknown>;
  };
}

function carrier(): (name: RequestName, input: unknown, session: string | null) => Promise<Answer<unknown>> {
  const shell = window.studbook;
  if (shell !== undefined) return (name, input, session) => shell[name](input, session);
  return loopback(takeToken());
}

const carry = carrier();

export const send: Send = async <N extends RequestName>(name: N, input: RequestInput<N>) => {
  const session = sessionToken();
  const answer = (await carry(name, input, session)) as Answer<RequestOutput<N>>;
  if (!answer.ok && answer.error.code === 'not_signed_in' && session !== null) sessionOver(session);
  return answer;
};
