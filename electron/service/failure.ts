import type { ErrorCode, FieldFault, RequestError } from '../../core/contract/errors.ts';

/** Stops a request with an answer the caller is meant to see; anything else thrown is answered as `internal`. */
export class RequestFailure extends Error {
  readonly code: ErrorCode;
  readonly details: readonly FieldFault[];

  constructor(code: ErrorCode, message: string, details: readonly FieldFault[] = []) {
    super(message);
    this.name = 'RequestFailure';
    this.code = code;
    this.details = details;
  }

  toError(): RequestError {
    return { code: this.code, message: this.message, details: this.details };
  }
}

/**
 * A refusal whose traces are kept: what the request has written up to here stays, because a wrong secret has to be
 * counted. Only to be thrown before anything else is written.
 */
export class KeptFailure extends RequestFailure {}

/** One field is wrong. */
export function invalidField(field: string, value: string, allowed: string): RequestFailure {
  return new RequestFailure('invalid_input', `${field}: ${allowed}`, [{ field, value, allowed }]);
}

/** A record that another one names, or that was asked for, isn't on the register. */
export function notFound(what: string, field: string, value: string): RequestFailure {
  return new RequestFailure('not_found', `There is no such ${what} on the register`, [
    { field, value, allowed: `the id of a ${what} on the register` },
  ]);
}
