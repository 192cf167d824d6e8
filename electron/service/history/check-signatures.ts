import type Database from 'better-sqlite3';
import { collector } from './findings.ts';
import type { Found } from './tasks.ts';

interface SignedRecord {
  readonly id: string;
  readonly originId: string;
  readonly sequence: number;
  /** What the signature's own text says. */
  readonly signed: string | null;
  readonly signedHash: string | null;
  /** Hash the signed record has now; null when it is gone. */
  readonly stands: string | null;
  /** 1 when the row that lists read says the same as the text. */
  readonly listed: number;
}

/** Holds each signature against the record it was put on: it was given for that content and no other. */
export function checkSignatures(database: Database.Database): Found {
  const found = collector();
  let looked = 0;
  const rows = database
    .prepare<[], SignedRecord>(
      `with told as (
         select id, origin_id, sequence, body ->> '$.data.eventId' as signed, body ->> '$.data.hash' as signed_hash,
           body ->> '$.data.personId' as person, body ->> '$.data.meaning' as meaning
           from event where kind = 'record signed' and json_valid(body))
       select told.id, told.origin_id as originId, told.sequence, told.signed, told.signed_hash as signedHash,
         event.hash as stands, exists (select 1 from signature where signature.id = told.id
           and signature.event_id = told.signed and signature.hash = told.signed_hash
           and signature.person_id = told.person and signature.meaning = told.meaning) as listed
         from told left join event on event.id = told.signed order by told.origin_id, told.sequence`,
    )
    .iterate();
  for (const { id, originId, sequence, signed, signedHash, stands, listed } of rows) {
    const about = { originId, sequence, eventId: id };
    if (stands === null)
      found.add('signature differs', `It stands on record ${signed}, which is not in the log`, about);
    else if (stands !== signedHash) {
      found.add('signature differs', `Record ${signed} no longer has the content that was signed`, about);
    }
    if (listed === 0) found.add('signature differs', 'The lists show it otherwise than its text', about);
    looked += 1;
  }
  return found.found(looked);
}
