import type { ImportKind, ImportOptions } from '../../core/contract/import.ts';
import type { JointData } from '../../core/contract/joint.ts';
import type { CertificateData, ToolData } from '../../core/contract/tool.ts';
import type { OnRegister, RegisterLookup } from '../../electron/service/import/lookup.ts';
import { readImport } from '../../electron/service/import/read.ts';

export const METRIC: ImportOptions = {
  encoding: 'utf-8',
  delimiter: ',',
  decimalSign: '.',
  units: { length: 'mm', stress: 'MPa', pressure: 'bar', torque: 'N.m', temperature: 'degC' },
};

export const EMPTY_REGISTER: RegisterLookup = {
  today: '2026-12-31',
  toolWithSerial: () => null,
  unitId: () => null,
  joint: () => null,
  tool: () => null,
  certificate: () => null,
  jobs: null,
};

interface File {
  readonly options?: Partial<ImportOptions>;
  readonly lookup?: Partial<RegisterLookup>;
}

export function bytesOf(kind: ImportKind, bytes: Uint8Array, { options, lookup }: File = {}) {
  return readImport(
    {
      kind,
      fileName: 'list.csv',
      content: Buffer.from(bytes).toString('base64'),
      options: { ...METRIC, ...options },
      campaignId: null,
    },
    { ...EMPTY_REGISTER, ...lookup },
  );
}

export function readJoints(text: string, file: File = {}) {
  const result = bytesOf('joints', Buffer.from(text, 'utf8'), file);
  if (result.kind !== 'joints') throw new Error('another kind of file was read');
  return result;
}

export function readTools(text: string, file: File = {}) {
  const result = bytesOf('tools', Buffer.from(text, 'utf8'), file);
  if (result.kind !== 'tools') throw new Error('another kind of file was read');
  return result;
}

export function readCertificate(text: string, file: File = {}) {
  const result = bytesOf('certificate', Buffer.from(text, 'utf8'), file);
  if (result.kind !== 'certificate') throw new Error('another kind of file was read');
  return result;
}

export function readJobs(text: string, file: File = {}) {
  const result = bytesOf('jobs', Buffer.from(text, 'utf8'), file);
  if (result.kind !== 'jobs') throw new Error('another kind of file was read');
  return result;
}

export const UNIT_ID = '0198c000-0000-7000-8000-000000000001';

export function onRegister<T>(data: T, id = '0198c000-0000-7000-8000-000000000002'): OnRegister<T> {
  return { id, version: 3, data };
}

export const jointsByTag =
  (...joints: JointData[]) =>
  (tag: string) => {
    const data = joints.find((joint) => joint.tag === tag);
    return data === undefined ? null : onRegister(data);
  };

export const toolsByNumber =
  (...tools: (OnRegister<ToolData> | ToolData)[]) =>
  (number: string) => {
    const known = tools.map((tool) => ('data' in tool ? tool : onRegister(tool)));
    return known.find(({ data }) => data.number === number) ?? null;
  };

export const certificatesOf =
  (...certificates: CertificateData[]) =>
  (toolId: string, number: string) =>
    certificates.find((each) => each.toolId === toolId && each.number === number) ?? null;
