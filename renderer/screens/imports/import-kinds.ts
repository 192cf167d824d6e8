import type { ImportKind } from '../../../core/contract/import.ts';

interface KindWords {
  readonly title: string;
  readonly one: string;
  readonly many: string;
  readonly home: string;
  /** Its columns are in units that are asked for the file. */
  readonly measured: boolean;
}

export const IMPORT_KINDS: Record<ImportKind, KindWords> = {
  joints: { title: 'Import joints', one: 'joint', many: 'joints', home: '/joints', measured: true },
  tools: { title: 'Import tools', one: 'tool', many: 'tools', home: '/tools', measured: true },
  certificate: {
    title: 'Import a certificate',
    one: 'certificate',
    many: 'certificates',
    home: '/tools',
    measured: true,
  },
  jobs: { title: 'Import jobs', one: 'job', many: 'jobs', home: '/plan/campaigns', measured: false },
};

export const kindOf = (text: string): ImportKind | null =>
  text === 'joints' || text === 'tools' || text === 'certificate' || text === 'jobs' ? text : null;
