/** Everything a request can fail with. Texts for people are in `message`; `details` names fields and values. */
export const ERROR_CODES = [
  'invalid_input',
  'unknown_request',
  'not_found',
  'duplicate',
  'conflict',
  'refused',
  'not_signed_in',
  'not_open',
  'register_not_sqlite',
  'register_foreign',
  'register_newer',
  'register_locked',
  'register_damaged',
  'register_location',
  'disk_full',
  'busy',
  'internal',
] as const;

export type ErrorCode = (typeof ERROR_CODES)[number];

/** One fault in the input: which field, what stood there, what is allowed. */
export interface FieldFault {
  readonly field: string;
  readonly value: string;
  readonly allowed: string;
}

export interface RequestError {
  readonly code: ErrorCode;
  readonly message: string;
  readonly details: readonly FieldFault[];
}

export type Answer<T> = { ok: true; value: T } | { ok: false; error: RequestError };
