import { lineOfCertificate } from '../../../core/calibration/certificate.ts';
import type { EntryDoubt } from '../../../core/contract/certificate-view.ts';
import type { CertificateData, Measured, ToolClass } from '../../../core/contract/tool.ts';
import { append } from '../chain/append.ts';
import type { ReadContext, WriteContext } from '../context.ts';
import { invalidField, notFound, RequestFailure } from '../failure.ts';
import { nameKey } from '../fold.ts';
import { findTool, toolsWithCertificates } from '../repositories/tool.ts';
import { todayAt } from '../time.ts';
import { certificateDoubts } from './certificate-doubts.ts';
import { checkDistinct } from './distinct.ts';

const MEASURED_OF: Partial<Record<ToolClass, Measured['kind']>> = {
  'drive unit': 'pressure-torque',
  gauge: 'gauge',
  'hand torque wrench': 'hand torque',
};

/** Checks what the certificate says against the register and records it. */
export async function recordCertificate(
  context: WriteContext,
  data: CertificateData,
  importId: string | null,
): Promise<string> {
  const { db, newId } = context;
  const tool = await measuredTool(context, data);
  checkDates(data);
  if (data.measured.kind === 'pressure-torque' && lineOfCertificate(data) === null) {
    throw invalidField(
      'data.measured.points',
      `${data.measured.points.length} points`,
      'points at three pressures or more, from which a line can be drawn',
    );
  }
  const refusing = certificateDoubts(data, tool.data.properties, todayAt(context)).filter(
    ({ refuses }) => refuses,
  );
  if (refusing.length > 0) throw doubted(refusing, data);
  checkDistinct('data.withToolIds', data.withToolIds);
  const companions = await toolsWithCertificates(db, { ids: data.withToolIds });
  const missing = data.withToolIds.find((toolId) => !companions.some(({ id }) => id === toolId));
  if (missing !== undefined) throw notFound('tool', 'data.withToolIds', missing);
  await checkNumber(context, data, tool.data.number);
  const id = newId();
  await append(context, [{ kind: 'certificate added', id, data: { data, importId } }]);
  return id;
}

/** Refuses what looks wrong until a person has confirmed it by its name. */
export async function checkConfirmed(context: WriteContext, data: CertificateData): Promise<void> {
  const tool = await measuredTool(context, data);
  const doubts = certificateDoubts(data, tool.data.properties, todayAt(context));
  // What can't be right is refused where it is recorded; there is nothing to confirm about the rest of it.
  if (doubts.some(({ refuses }) => refuses)) return;
  const open = doubts.filter(({ code }) => !data.confirmed.includes(code));
  if (open.length > 0) throw doubted(open, data);
}

/** The tool the certificate hangs on, of a class that has certificates of its kind. */
export async function measuredTool({ db }: Pick<ReadContext, 'db'>, data: CertificateData) {
  const tool = await findTool(db, data.toolId);
  if (tool === null) throw notFound('tool', 'data.toolId', data.toolId);
  const { class: toolClass } = tool.data.properties;
  const expected = MEASURED_OF[toolClass];
  if (expected !== data.measured.kind) {
    throw invalidField(
      'data.measured.kind',
      data.measured.kind,
      expected ??
        `no certificate on a ${toolClass}: it hangs on the drive unit, the gauge or the hand torque wrench`,
    );
  }
  if (data.asFound !== null && data.asFound.kind !== expected) {
    throw invalidField('data.asFound.kind', data.asFound.kind, expected);
  }
  return tool;
}

function checkDates({ calibratedOn, validUntil, asFound, condition }: CertificateData): void {
  if (validUntil < calibratedOn) {
    throw invalidField('data.validUntil', validUntil, `${calibratedOn} (calibrated on) or later`);
  }
  if (asFound !== null && condition === 'as found') {
    throw invalidField(
      'data.condition',
      condition,
      'as left: with points as found beside them, the others were taken after adjustment',
    );
  }
}

async function checkNumber({ db }: WriteContext, data: CertificateData, toolNumber: string): Promise<void> {
  const namesake = await db
    .selectFrom('certificate')
    .select('id')
    .where('tool_id', '=', data.toolId)
    .where('number_key', '=', nameKey(data.number))
    .executeTakeFirst();
  if (!namesake) return;
  throw new RequestFailure(
    'duplicate',
    `${toolNumber} has a certificate ${data.number} already. Certificates are never changed: enter a corrected one under its own number`,
    [{ field: 'data.number', value: data.number, allowed: 'a number this tool has no certificate under' }],
  );
}

/** Each doubt at its field: what refuses where it stands, what can be confirmed at the list of what was. */
function doubted(doubts: readonly EntryDoubt[], data: CertificateData): RequestFailure {
  const details = doubts.map((doubt) => ({
    field: doubt.refuses ? fieldOf(doubt) : 'data.confirmed',
    value: doubt.refuses ? shownValue(doubt, data) : doubt.code,
    allowed: doubt.refuses ? doubt.text : `confirm "${doubt.code}" or correct it: ${doubt.text}`,
  }));
  const [first] = details;
  const rest = details.length > 1 ? ` (and ${details.length - 1} more)` : '';
  return new RequestFailure('invalid_input', `${first?.field}: ${first?.allowed}${rest}`, details);
}

export function fieldOf({ code, point, series }: EntryDoubt): string {
  if (code === 'dated in the future') return 'data.calibratedOn';
  const points = series === 'as found' ? 'data.asFound.points' : 'data.measured.points';
  return point === null ? points : `${points}.${point}`;
}

function shownValue({ code, series }: EntryDoubt, data: CertificateData): string {
  if (code === 'dated in the future') return data.calibratedOn;
  const { points } = series === 'as found' && data.asFound !== null ? data.asFound : data.measured;
  return `${points.length} points`;
}
