import type { REQUEST_KINDS, RequestName } from '../../core/contract/names.ts';
import type { ParsedInput, RequestOutput } from '../../core/contract/requests.ts';
import type { ReadContext, WriteContext } from './context.ts';
import { readBreakoutOrTightening, recordBreakout, recordTightening } from './requests/event.ts';
import { confirmImport, importColumns, previewImport } from './requests/import.ts';
import { getJoint, jointChart, jointHistory, listJoints, saveJoint } from './requests/joint.ts';
import { listPeople, savePerson } from './requests/person.ts';
import { choices } from './requests/reference.ts';
import { computeSetting, getSetting, issueSetting, listSettings } from './requests/setting.ts';
import { addCertificate, getTool, listTools, saveTool } from './requests/tool.ts';
import { listUnits, saveUnit } from './requests/unit.ts';

type NamesOf<Kind> = { [N in RequestName]: (typeof REQUEST_KINDS)[N] extends Kind ? N : never }[RequestName];

/** The register's own life (state, create) is the service's; everything else is handled here. */
export type ReadName = Exclude<NamesOf<'read'>, 'register.state'>;
export type WriteName = Exclude<NamesOf<'write'>, 'register.create'>;

export type Read<N extends ReadName> = (
  context: ReadContext,
  input: ParsedInput<N>,
) => Promise<RequestOutput<N>>;
export type Write<N extends WriteName> = (
  context: WriteContext,
  input: ParsedInput<N>,
) => Promise<RequestOutput<N>>;

export const READS: { readonly [N in ReadName]: Read<N> } = {
  'reference.choices': choices,
  'unit.list': listUnits,
  'person.list': listPeople,
  'joint.list': listJoints,
  'joint.get': getJoint,
  'joint.history': jointHistory,
  'joint.chart': jointChart,
  'tool.list': listTools,
  'tool.get': getTool,
  'setting.compute': computeSetting,
  'setting.get': getSetting,
  'setting.list': listSettings,
  'event.get': readBreakoutOrTightening,
  'import.columns': importColumns,
  'import.preview': previewImport,
};

export const WRITES: { readonly [N in WriteName]: Write<N> } = {
  'unit.save': saveUnit,
  'person.save': savePerson,
  'joint.save': saveJoint,
  'tool.save': saveTool,
  'certificate.add': addCertificate,
  'setting.issue': issueSetting,
  'event.recordTightening': recordTightening,
  'event.recordBreakout': recordBreakout,
  'import.confirm': confirmImport,
};
