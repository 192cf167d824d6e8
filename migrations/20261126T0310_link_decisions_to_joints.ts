import type { Kysely } from 'kysely';
import { runStatements } from './statements.ts';

/** A decision of a case belongs to the history of every joint it was about. */
export async function up(db: Kysely<unknown>): Promise<void> {
  await runStatements(db, [
    `insert into event_joint (event_id, joint_id)
       select distinct recall_decision.event_id, tightening.joint_id from recall_decision
         join tightening on tightening.id = recall_decision.tightening_id`,
  ]);
}
