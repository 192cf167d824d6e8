import type { Answer } from './errors.ts';

/** Whatever carries out requests by name: the service itself, or a transport's far end. It answers, it never throws. */
export interface RequestHandler {
  /** `session` says at which window it was asked: the token of a sign-in, beside the input and never in it. */
  handle(name: string, input: unknown, session?: string | null): Promise<Answer<unknown>>;
}

/** A request as it travels over a message port; `id` pairs it with its answer. */
export interface PortRequest {
  readonly id: number;
  readonly name: string;
  readonly input: unknown;
  readonly session?: string | null;
}

export interface PortAnswer {
  readonly id: number;
  readonly answer: Answer<unknown>;
}
