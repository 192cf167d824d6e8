import { giveSecretTo, saveRoles } from './access/roles.ts';
import { addAttachment, getAttachment, listAttachments } from './requests/attachment.ts';
import { listAudit } from './requests/audit.ts';
import { getBoard } from './requests/board.ts';
import { breakoutHistory, breakoutOwnRecord, forecastBreakout } from './requests/breakout.ts';
import { getCampaign, listCampaigns, saveCampaign } from './requests/campaign.ts';
import {
  closeCase,
  decideCase,
  getCase,
  listBatches,
  listCases,
  openCase,
  previewCase,
} from './requests/case.ts';
import { addCertificate, assessCertificate } from './requests/certificate.ts';
import {
  assessToolCheck,
  checkTool,
  listChecklists,
  listToolRules,
  saveChecklist,
  saveToolRule,
} from './requests/check.ts';
import { listClassRules, saveClassRule } from './requests/class-rule.ts';
import { listCompetences, saveCompetence } from './requests/competence.ts';
import { findByLabel, moveTools } from './requests/custody.ts';
import { recordCycles } from './requests/cycles.ts';
import { dropDraft, getDraft, saveDraft } from './requests/draft.ts';
import { readBreakoutOrTightening, recordBreakout, recordTightening } from './requests/event.ts';
import { findJointByTag } from './requests/find-joint.ts';
import { cancelForecasts, forecastRows, forecastsRun, startForecasts } from './requests/forecasts.ts';
import { frictionEvidence } from './requests/friction.ts';
import type { Read, ReadName, Write, WriteName } from './requests/handler.ts';
import {
  cancelHistoryJob,
  exportHistory,
  historyProgress,
  readExportPart,
  verifyHistory,
} from './requests/history.ts';
import { confirmImport, importColumns, previewImport } from './requests/import.ts';
import { getJob, listJobChanges, listJobs, saveJob } from './requests/job.ts';
import { getJoint, jointChart, jointHistory, listJoints, saveJoint } from './requests/joint.ts';
import { getKit, listKits, saveKit } from './requests/kit.ts';
import { jointLeaksOf, listLeaks, verifyWhichFirst } from './requests/leak.ts';
import {
  countContainment,
  decideDeviation,
  jointStandingOf,
  listDeviations,
  stepJoint,
} from './requests/life.ts';
import { listLookAlikes } from './requests/look-alike.ts';
import { getMaterials } from './requests/materials.ts';
import { openPassesOf, recordPassOf } from './requests/pass.ts';
import { listPeople, savePerson } from './requests/person.ts';
import { recordCompleteness } from './requests/record.ts';
import { choices } from './requests/reference.ts';
import { runReplay } from './requests/replay.ts';
import { checkRetightening } from './requests/retightening.ts';
import { simulateScatter } from './requests/scatter.ts';
import {
  computeSetting,
  getSetting,
  issueSetting,
  listSettings,
  recomputeSetting,
  suitTools,
} from './requests/setting.ts';
import { compareJobSheet } from './requests/sheet.ts';
import { readRecord, signEvent } from './requests/signature.ts';
import {
  approvePlan,
  confirmTableValues,
  listConfirmations,
  listPlans,
  listSiteRows,
  savePlan,
  saveSiteRow,
} from './requests/site.ts';
import { getTool, listDue, listTools, listUses, saveTool } from './requests/tool.ts';
import { toolRecord } from './requests/tool-record.ts';
import { listUnits, saveUnit } from './requests/unit.ts';

export const READS: { readonly [N in ReadName]: Read<N> } = {
  'reference.choices': choices,
  'breakout.history': breakoutHistory,
  'breakout.forecast': forecastBreakout,
  'breakout.ownRecord': breakoutOwnRecord,
  'forecasts.start': startForecasts,
  'forecasts.run': forecastsRun,
  'forecasts.cancel': cancelForecasts,
  'forecasts.rows': forecastRows,
  'replay.run': runReplay,
  'friction.evidence': frictionEvidence,
  'scatter.simulate': simulateScatter,
  'unit.list': listUnits,
  'person.list': listPeople,
  'competence.list': listCompetences,
  'joint.list': listJoints,
  'joint.get': getJoint,
  'joint.history': jointHistory,
  'joint.chart': jointChart,
  'joint.find': findJointByTag,
  'joint.lookAlikes': listLookAlikes,
  'joint.retightening': checkRetightening,
  'joint.leaks': jointLeaksOf,
  'leak.list': listLeaks,
  'leak.verifyFirst': verifyWhichFirst,
  'joint.standing': jointStandingOf,
  'joint.containment': countContainment,
  'deviation.list': listDeviations,
  'classRule.list': listClassRules,
  'record.completeness': recordCompleteness,
  'joint.compareSheet': compareJobSheet,
  'tool.list': listTools,
  'tool.get': getTool,
  'tool.find': findByLabel,
  'tool.record': toolRecord,
  'tool.uses': listUses,
  'tool.due': listDue,
  'certificate.assess': assessCertificate,
  'check.assess': assessToolCheck,
  'checklist.list': listChecklists,
  'toolRule.list': listToolRules,
  'kit.list': listKits,
  'kit.get': getKit,
  'campaign.list': listCampaigns,
  'campaign.get': getCampaign,
  'job.list': listJobs,
  'job.get': getJob,
  'board.get': getBoard,
  'campaign.materials': getMaterials,
  'job.changes': listJobChanges,
  'attachment.list': listAttachments,
  'attachment.get': getAttachment,
  'batch.list': listBatches,
  'case.preview': previewCase,
  'case.list': listCases,
  'case.get': getCase,
  'setting.compute': computeSetting,
  'setting.suits': suitTools,
  'setting.get': getSetting,
  'setting.list': listSettings,
  'setting.recompute': recomputeSetting,
  'event.get': readBreakoutOrTightening,
  'pass.open': openPassesOf,
  'draft.get': getDraft,
  'history.record': readRecord,
  'audit.list': listAudit,
  'history.verify': verifyHistory,
  'history.export': exportHistory,
  'history.progress': historyProgress,
  'history.cancel': cancelHistoryJob,
  'history.exportPart': readExportPart,
  'siteRow.list': listSiteRows,
  'plan.list': listPlans,
  'tableValue.list': listConfirmations,
  'import.columns': importColumns,
  'import.preview': previewImport,
};

export const WRITES: { readonly [N in WriteName]: Write<N> } = {
  'unit.save': saveUnit,
  'person.save': savePerson,
  'person.saveRoles': saveRoles,
  'access.giveSecret': giveSecretTo,
  'competence.save': saveCompetence,
  'joint.save': saveJoint,
  'joint.step': stepJoint,
  'cycles.record': recordCycles,
  'deviation.decide': decideDeviation,
  'classRule.save': saveClassRule,
  'tool.save': saveTool,
  'tool.move': moveTools,
  'tool.check': checkTool,
  'certificate.add': addCertificate,
  'checklist.save': saveChecklist,
  'toolRule.save': saveToolRule,
  'kit.save': saveKit,
  'campaign.save': saveCampaign,
  'job.save': saveJob,
  'attachment.add': addAttachment,
  'case.open': openCase,
  'case.decide': decideCase,
  'case.close': closeCase,
  'setting.issue': issueSetting,
  'event.recordTightening': recordTightening,
  'event.recordBreakout': recordBreakout,
  'event.sign': signEvent,
  'pass.record': recordPassOf,
  'draft.save': saveDraft,
  'draft.drop': dropDraft,
  'siteRow.save': saveSiteRow,
  'plan.save': savePlan,
  'plan.approve': approvePlan,
  'tableValue.confirm': confirmTableValues,
  'import.confirm': confirmImport,
};
