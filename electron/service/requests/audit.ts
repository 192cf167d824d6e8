import { auditPage } from '../repositories/audit.ts';
import type { Read } from './handler.ts';

export const listAudit: Read<'audit.list'> = ({ db, site }, input) => auditPage(db, site.timeZone, input);
