/**
 * Tables that do not follow from the events: the log itself, who writes it, what answers a repeated request, drafts,
 * refusals, secrets. Every other table can be worked out again from the texts alone.
 */
export const NOT_PROJECTED: readonly string[] = [
  'event',
  'origin',
  'request_receipt',
  'draft',
  'refusal',
  'person_secret',
  'wrong_secret',
];
