import type { CertificateData } from '../../../core/contract/tool.ts';
import type { Entered } from '../../../core/units/entered.ts';
import type { Projector } from '../chain/projector.ts';
import { nameKey } from '../fold.ts';
import { insertRows } from '../register/insert.ts';

export const projectCertificates: Projector<'certificate added'> = async (db, events) => {
  for (const { id, data } of events) {
    const certificate = data.data;
    await db
      .insertInto('certificate')
      .values({
        id,
        tool_id: certificate.toolId,
        number: certificate.number,
        number_key: nameKey(certificate.number),
        laboratory: certificate.laboratory,
        calibrated_on: certificate.calibratedOn,
        valid_until: certificate.validUntil,
        result: certificate.result,
        condition: certificate.condition,
        measured: certificate.measured.kind,
        data: JSON.stringify(certificate),
      })
      .execute();
    await insertRows(
      db,
      'certificate_point',
      pointsOf(certificate).map((point, position) => ({ certificate_id: id, position, ...point })),
    );
    await insertRows(db, 'event_tool', [
      { event_id: id, tool_id: certificate.toolId, role: 'calibrated', position: 0 },
      ...certificate.withToolIds.map((toolId, position) => ({
        event_id: id,
        tool_id: toolId,
        role: 'calibrated with' as const,
        position,
      })),
    ]);
    await db
      .updateTable('tool')
      .set(({ selectFrom }) => ({
        valid_until: selectFrom('certificate')
          .select('valid_until')
          .where('tool_id', '=', certificate.toolId)
          .orderBy('calibrated_on', 'desc')
          .orderBy('valid_until', 'desc')
          .limit(1),
      }))
      .where('id', '=', certificate.toolId)
      .execute();
  }
};

function pointsOf({ measured }: CertificateData) {
  if (measured.kind === 'gauge') {
    return measured.points.map(({ indicated, reference }) => ({
      direction: null,
      ...pointColumns(indicated, reference),
    }));
  }
  if (measured.kind === 'hand torque') {
    return measured.points.map(({ set, reference }) => ({
      direction: null,
      ...pointColumns(set, reference),
    }));
  }
  return measured.points.map(({ direction, pressure, torque }) => ({
    direction,
    ...pointColumns(pressure, torque),
  }));
}

function pointColumns(pressure: Entered, measured: Entered) {
  return {
    pressure_text: pressure.text,
    pressure_unit: pressure.unit,
    pressure_pa: pressure.si,
    measured_text: measured.text,
    measured_unit: measured.unit,
    measured_si: measured.si,
  };
}
