import type { ImportKind } from '../../../core/contract/import.ts';

interface KindWords {
  readonly title: string;
  readonly one: string;
  readonly many: string;
  readonly home: string;
}

export const IMPORT_KINDS: Record<ImportKind, KindWords> = {
  joints: { title: 'Import joints', one: 'joint', many: 'joints', home: '/joints' },
  tools: { title: 'Import tools', one: 'tool', many: 'tools', home: '/tools' },
  certificate: { title: 'Import a certificate', one: 'certificate', many: 'certificates', home: '/tools' },
};

export const kindOf = (text: string): ImportKind | null =>
  text === 'joints' || text === 'tools' || text === 'certificate' ? text : null;
