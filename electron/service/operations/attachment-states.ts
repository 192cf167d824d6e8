import type { AttachmentRow } from '../../../core/contract/attachment.ts';
import type { ReadContext } from '../context.ts';
import { stateOfAttachment } from '../register/attachment-files.ts';
import { attachmentsOf } from '../repositories/attachment.ts';

/** Bytes read through for one answer; a list with more says of the rest that it was not checked. */
const READ_AT_MOST = 40_000_000;

type Owner = Parameters<typeof attachmentsOf>[1];

/** What is attached, each file held against its hash. */
export async function attachmentsWithState(context: ReadContext, owner: Owner): Promise<AttachmentRow[]> {
  const rows = await attachmentsOf(context.db, owner);
  let left = READ_AT_MOST;
  return rows.map((row) => {
    const read = row.size <= left;
    if (read) left -= row.size;
    return { ...row, state: stateOf(context, row, read) };
  });
}

/** A file that can't be read is no reason to keep the rest of the list back. */
function stateOf(
  { attachments, log }: ReadContext,
  row: Omit<AttachmentRow, 'state'>,
  read: boolean,
): AttachmentRow['state'] {
  try {
    return stateOfAttachment(attachments, row, read);
  } catch (error) {
    log('error', `attachment ${row.hash} could not be read`, error);
    return 'not checked';
  }
}
