import * as z from 'zod';
import {
  accessState,
  competenceData,
  competenceRow,
  firstAdministrator,
  newSecret,
  override,
  personRoles,
  presentRow,
  secretChange,
  signedIn,
  signInInput,
} from './access.ts';
import { attachmentContent, attachmentData, attachmentOwner, attachmentRow, hashText } from './attachment.ts';
import { auditListInput, auditRow } from './audit.ts';
import { board } from './board.ts';
import {
  campaignData,
  campaignRow,
  jobChange,
  jobChangesInput,
  jobData,
  jobListInput,
  jobReason,
  jobRow,
} from './campaign.ts';
import {
  checkAssessment,
  checkData,
  checkDraft,
  checklistData,
  checklistRow,
  dueInput,
  dueRow,
  toolRuleData,
  toolRuleRow,
} from './check.ts';
import { recomputation, sheetComparison, sheetInput } from './comparison.ts';
import { kitData, kitRow, moveData } from './custody.ts';
import { draftDropInput, draftFound, draftGetInput, draftSaved, draftSaveInput } from './draft.ts';
import type { Answer } from './errors.ts';
import { breakoutData, eventDetail, personData, tighteningData, unitData } from './event.ts';
import { breakoutHistory, forecast, forecastInput, historyInput } from './forecast.ts';
import { forecastRow, forecastRowsInput, forecastRun, forecastsInput } from './forecast-list.ts';
import { frictionEvidence, frictionInput } from './friction.ts';
import { exportName, exportPart, historyJob, verifyInput } from './history.ts';
import { importColumn, importConfirm, importDone, importInput, importKind, importReport } from './import.ts';
import {
  historyRow,
  jointChart,
  jointData,
  jointDetail,
  jointFound,
  jointListInput,
  jointSummary,
  lookAlikeRow,
  personSummary,
  unitSummary,
} from './joint.ts';
import { cyclesData, jointLeaks, leakList, leakListInput, verifyFirstInput, verifyList } from './leak-log.ts';
import {
  classRuleData,
  classRuleRow,
  containmentCount,
  deviationDecisionInput,
  deviationListInput,
  deviationRow,
  jointStanding,
  stepInput,
  stepTakenAnswer,
} from './life.ts';
import { materials } from './materials.ts';
import type { RequestName } from './names.ts';
import { ownRecord } from './own-record.ts';
import { openPasses, passRecordInput } from './pass.ts';
import {
  batchRow,
  caseData,
  caseDetail,
  caseState,
  caseSummary,
  closeData,
  decisionData,
  recallView,
} from './recall.ts';
import { completeness, completenessInput } from './record.ts';
import { referenceChoices, registerCreate, registerState } from './register.ts';
import { replayInput, replayView } from './replay.ts';
import { retighteningAnswer, retighteningInput } from './retightening.ts';
import { scatterInput, scatterView } from './scatter.ts';
import { issuedSetting, settingCard, settingInput, settingSummary, suitRow } from './setting.ts';
import { loggedRecord, signInput } from './signature.ts';
import {
  confirmation,
  confirmData,
  passPlanData,
  planRow,
  siteRow,
  siteRowData,
  siteRowListInput,
} from './site.ts';
import {
  certificateAssessment,
  certificateData,
  toolData,
  toolDetail,
  toolFound,
  toolListInput,
  toolSummary,
} from './tool.ts';
import { toolRecord, useRow } from './tool-record.ts';
import { id, idempotencyKey, optionalText, page, text } from './values.ts';

const nothing = z.strictObject({});
const byId = z.strictObject({ id });

/** Answer to a write: the record's id, its version where it has one, and whether an earlier try had already done it. */
const written = z.strictObject({ id, version: z.int().nullable(), alreadyRecorded: z.boolean() });
export type Written = z.infer<typeof written>;

const listOf = <T extends z.ZodType>(row: T) => z.strictObject({ rows: z.array(row), total: z.int() });

/** Writes carry a key; edits name the version they started from (null for a new record). */
const write = <T extends z.ZodRawShape>(shape: T) => z.strictObject({ key: idempotencyKey, ...shape });
const edit = <T extends z.ZodType>(data: T) =>
  write({ id: id.nullable(), version: z.int().min(1).nullable(), data });

/** The one request map: name → input and output schema. Kinds (read, write) stand in names.ts. */
export const requests = {
  'register.state': { input: nothing, output: registerState },
  'register.create': { input: write({ data: registerCreate }), output: registerState },
  'access.state': { input: nothing, output: accessState },
  /** Who is signed in now, at whichever window of this register. */
  'access.present': { input: nothing, output: listOf(presentRow) },
  /** Somebody types at the window: they are there, though nothing is asked. */
  'access.stay': { input: nothing, output: nothing },
  /** Names the first administrator; from then on the register asks who is there, and that is never undone. */
  'access.begin': { input: firstAdministrator, output: signedIn },
  'access.signIn': { input: signInInput, output: signedIn },
  'access.signOut': { input: nothing, output: nothing },
  'access.changeSecret': { input: secretChange, output: signedIn },
  /** A first secret, or a new one for one that was forgotten; the person changes it at the next sign-in. */
  'access.giveSecret': { input: write({ personId: id, secret: newSecret }), output: written },
  'reference.choices': { input: nothing, output: referenceChoices },
  /** What openings said; nothing is computed ahead of what is on record. */
  'breakout.history': { input: historyInput, output: breakoutHistory },
  'breakout.forecast': { input: forecastInput, output: forecast },
  /** Forecasts held against what then happened, and services that move. */
  'breakout.ownRecord': { input: nothing, output: ownRecord },
  /** Works in the background on every joint asked for; `forecasts.run` tells how far it is. Nothing is recorded. */
  'forecasts.start': { input: forecastsInput, output: forecastRun },
  /** The newest where no id is given; null when none was started since the program was. */
  'forecasts.run': { input: z.strictObject({ id: id.nullable() }), output: forecastRun.nullable() },
  'forecasts.cancel': { input: byId, output: forecastRun },
  'forecasts.rows': { input: forecastRowsInput, output: listOf(forecastRow) },
  /** Nut factors measured beside torques, with the number and spread behind each. */
  'friction.evidence': { input: frictionInput, output: frictionEvidence },
  /** Recorded tightenings with something taken to be otherwise; nothing is recorded. */
  'replay.run': { input: replayInput, output: replayView },
  /** A model run with stated inputs; nothing is recorded. */
  'scatter.simulate': { input: scatterInput, output: scatterView },
  'unit.list': { input: nothing, output: listOf(unitSummary) },
  'unit.save': { input: edit(unitData), output: written },
  'person.list': { input: nothing, output: listOf(personSummary) },
  'person.save': { input: edit(personData), output: written },
  'person.saveRoles': {
    input: write({ id, version: z.int().min(1).nullable(), roles: personRoles }),
    output: written,
  },
  'competence.list': { input: z.strictObject({ personId: id.nullable() }), output: listOf(competenceRow) },
  'competence.save': { input: edit(competenceData), output: written },
  'joint.list': { input: jointListInput, output: listOf(jointSummary) },
  'joint.get': { input: byId, output: jointDetail },
  'joint.save': { input: edit(jointData), output: written },
  'joint.history': { input: z.strictObject({ id, ...page }), output: listOf(historyRow) },
  'joint.chart': { input: byId, output: jointChart },
  'joint.find': { input: z.strictObject({ text: text(200) }), output: jointFound },
  'joint.lookAlikes': { input: byId, output: listOf(lookAlikeRow) },
  'joint.retightening': { input: retighteningInput, output: retighteningAnswer },
  'joint.leaks': { input: byId, output: jointLeaks },
  'leak.list': { input: leakListInput, output: leakList },
  'leak.verifyFirst': { input: verifyFirstInput, output: verifyList },
  /** A corrected count names the one it takes the place of. */
  'cycles.record': { input: write({ data: cyclesData, supersedes: id.nullable() }), output: written },
  /** State, what stands open, and the steps that lead on with everything each needs. */
  'joint.standing': { input: byId, output: jointStanding },
  'joint.step': { input: write(stepInput), output: written.extend(stepTakenAnswer) },
  'joint.containment': { input: nothing, output: listOf(containmentCount) },
  'deviation.list': { input: deviationListInput, output: listOf(deviationRow) },
  'deviation.decide': { input: write(deviationDecisionInput), output: written },
  'classRule.list': { input: nothing, output: listOf(classRuleRow) },
  'classRule.save': { input: edit(classRuleData), output: written },
  'record.completeness': { input: completenessInput, output: completeness },
  'joint.compareSheet': { input: sheetInput, output: sheetComparison },
  'tool.list': { input: toolListInput, output: listOf(toolSummary) },
  'tool.get': { input: byId, output: toolDetail },
  'tool.save': { input: edit(toolData), output: written },
  /** What a label's code or a typed number says; null when no tool has it. */
  'tool.find': { input: z.strictObject({ text: text(200) }), output: toolFound },
  'tool.record': { input: byId, output: toolRecord },
  'tool.uses': { input: z.strictObject({ id, ...page }), output: listOf(useRow) },
  'tool.due': { input: dueInput, output: listOf(dueRow) },
  'tool.move': { input: write({ data: moveData }), output: written },
  /** What its answers and comparisons say so far; nothing is recorded. */
  'check.assess': { input: z.strictObject({ data: checkDraft }), output: checkAssessment },
  /** `quarantined` says that the failed check has barred the tool. */
  'tool.check': {
    input: write({ data: checkData }),
    output: written.extend({ quarantined: z.boolean() }),
  },
  'certificate.assess': { input: z.strictObject({ data: certificateData }), output: certificateAssessment },
  'certificate.add': { input: write({ data: certificateData }), output: written },
  'checklist.list': { input: nothing, output: listOf(checklistRow) },
  'checklist.save': { input: edit(checklistData), output: written },
  'toolRule.list': { input: nothing, output: listOf(toolRuleRow) },
  'toolRule.save': { input: edit(toolRuleData), output: written },
  'kit.list': { input: z.strictObject({ closed: z.boolean(), ...page }), output: listOf(kitRow) },
  'kit.get': { input: byId, output: kitRow },
  'kit.save': { input: edit(kitData), output: written },
  'campaign.list': { input: z.strictObject({ closed: z.boolean(), ...page }), output: listOf(campaignRow) },
  'campaign.get': { input: byId, output: campaignRow },
  'campaign.save': { input: edit(campaignData), output: written },
  'campaign.materials': { input: byId, output: materials },
  'job.list': { input: jobListInput, output: listOf(jobRow) },
  'job.get': { input: byId, output: jobRow },
  /** Who changes it and why stand with every version, so that a change of the scope can be told. */
  'job.save': {
    input: write({
      id: id.nullable(),
      version: z.int().min(1).nullable(),
      data: jobData,
      personId: id,
      reason: jobReason,
    }),
    output: written,
  },
  /** Every job with how far it has come and what stands in its way, by system and test pack. */
  'board.get': { input: z.strictObject({ campaignId: id }), output: board },
  'job.changes': { input: jobChangesInput, output: listOf(jobChange) },
  'attachment.list': { input: attachmentOwner, output: listOf(attachmentRow) },
  'attachment.get': { input: z.strictObject({ hash: hashText }), output: attachmentContent },
  'attachment.add': { input: write({ data: attachmentData }), output: written },
  'batch.list': { input: z.strictObject({ text: optionalText(100), ...page }), output: listOf(batchRow) },
  /** What a case would find, before it is opened; nothing is recorded. */
  'case.preview': { input: z.strictObject({ data: caseData }), output: recallView },
  'case.list': {
    input: z.strictObject({ state: caseState.nullable(), ...page }),
    output: listOf(caseSummary),
  },
  'case.get': { input: byId, output: caseDetail },
  'case.open': { input: write({ data: caseData }), output: written },
  'case.decide': { input: write({ data: decisionData }), output: written },
  'case.close': { input: write({ data: closeData }), output: written },
  'setting.compute': { input: settingInput, output: settingCard },
  /** Every part of a hydraulic set on the register against this joint, for the choice of tools. */
  'setting.suits': { input: settingInput, output: z.array(suitRow) },
  'setting.issue': {
    input: write({
      data: settingInput,
      personId: id,
      overrides: z.array(override).max(20, 'at most 20').default([]),
    }),
    output: written,
  },
  'setting.get': { input: byId, output: issuedSetting },
  'setting.list': {
    input: z.strictObject({ jointId: id.nullable(), ...page }),
    output: listOf(settingSummary),
  },
  'setting.recompute': { input: byId, output: recomputation },
  'event.recordTightening': { input: write({ data: tighteningData }), output: written },
  'event.recordBreakout': { input: write({ data: breakoutData }), output: written },
  'event.get': { input: byId, output: eventDetail },
  'pass.open': {
    input: z.strictObject({ jointId: id, settingId: id.nullable().default(null) }),
    output: openPasses,
  },
  'pass.record': { input: write(passRecordInput), output: written },
  'draft.get': { input: draftGetInput, output: draftFound },
  /** Drafts carry no key: the newest one of a window is written over the one before, and none is an event. */
  'draft.save': { input: draftSaveInput, output: draftSaved },
  'draft.drop': { input: draftDropInput, output: nothing },
  'event.sign': { input: signInput, output: written },
  'history.record': { input: byId, output: loggedRecord },
  'audit.list': { input: auditListInput, output: listOf(auditRow) },
  /** Starts work in the background; `history.progress` tells how far it is. Nothing is recorded. */
  'history.verify': { input: verifyInput, output: historyJob },
  /** Writes the whole history into the data folder's exports. */
  'history.export': { input: nothing, output: historyJob },
  /** The newest where no id is given; null when none was started since the program was. */
  'history.progress': { input: z.strictObject({ id: id.nullable() }), output: historyJob.nullable() },
  'history.cancel': { input: byId, output: historyJob },
  'history.exportPart': {
    input: z.strictObject({ name: exportName, from: z.int().min(0) }),
    output: exportPart,
  },
  'siteRow.list': { input: siteRowListInput, output: listOf(siteRow) },
  'siteRow.save': { input: edit(siteRowData), output: written },
  'plan.list': { input: nothing, output: listOf(planRow) },
  /** The id may name a shipped plan, which is then refused by name. */
  'plan.save': {
    input: write({ id: text(60).nullable(), version: z.int().min(1).nullable(), data: passPlanData }),
    output: written,
  },
  'plan.approve': { input: write({ id, version: z.int().min(1), personId: id }), output: written },
  'tableValue.list': { input: nothing, output: listOf(confirmation) },
  'tableValue.confirm': { input: write({ data: confirmData }), output: written },
  'import.columns': { input: z.strictObject({ kind: importKind }), output: listOf(importColumn) },
  'import.preview': { input: importInput, output: importReport },
  'import.confirm': { input: write({ data: importConfirm }), output: importDone },
} as const satisfies Record<RequestName, { input: z.ZodType; output: z.ZodType }>;

/** What a caller sends. */
export type RequestInput<N extends RequestName> = z.input<(typeof requests)[N]['input']>;
/** What a handler receives after parsing. */
export type ParsedInput<N extends RequestName> = z.output<(typeof requests)[N]['input']>;
export type RequestOutput<N extends RequestName> = z.output<(typeof requests)[N]['output']>;

/** How the window talks to the service, whichever transport carries it. */
export type Send = <N extends RequestName>(
  name: N,
  input: RequestInput<N>,
) => Promise<Answer<RequestOutput<N>>>;
