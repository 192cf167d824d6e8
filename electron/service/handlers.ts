import { readBreakoutOrTightening, recordBreakout, recordTightening } from './requests/event.ts';
import type { Read, ReadName, Write, WriteName } from './requests/handler.ts';
import { confirmImport, importColumns, previewImport } from './requests/import.ts';
import { getJoint, jointChart, jointHistory, listJoints, saveJoint } from './requests/joint.ts';
import { listPeople, savePerson } from './requests/person.ts';
import { choices } from './requests/reference.ts';
import { computeSetting, getSetting, issueSetting, listSettings } from './requests/setting.ts';
import { addCertificate, getTool, listTools, saveTool } from './requests/tool.ts';
import { listUnits, saveUnit } from './requests/unit.ts';

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
