import type { Kysely } from 'kysely';
import { projectAccess, projectCompetences, projectRoles, projectSignIn } from '../projections/access.ts';
import { projectAttachments } from '../projections/attachment.ts';
import { projectCampaigns, projectJobs } from '../projections/campaign.ts';
import { projectCases, projectClosures, projectDecisions } from '../projections/case.ts';
import { projectCertificates } from '../projections/certificate.ts';
import { projectChecklists, projectChecks, projectToolRules } from '../projections/check.ts';
import { projectMoves } from '../projections/custody.ts';
import { projectJoints } from '../projections/joint.ts';
import { projectKits } from '../projections/kit.ts';
import { projectCycles } from '../projections/leak.ts';
import { projectClassRules, projectDecided, projectSteps } from '../projections/life.ts';
import { projectPasses } from '../projections/pass.ts';
import { projectPeople, projectSite, projectUnits } from '../projections/plant.ts';
import { projectSettings } from '../projections/setting.ts';
import { projectSignatures } from '../projections/signature.ts';
import {
  projectConfirmations,
  projectPlanApprovals,
  projectPlans,
  projectSiteRows,
} from '../projections/site.ts';
import { projectTools } from '../projections/tool.ts';
import { projectBreakouts, projectTightenings } from '../projections/work.ts';
import type { RegisterSchema } from '../register/schema.ts';
import type { EventKind, RecordedEvent } from './events.ts';
import type { Projector } from './projector.ts';

const PROJECTORS: { readonly [K in EventKind]: Projector<K> } = {
  'register created': projectSite,
  'unit saved': projectUnits,
  'person saved': projectPeople,
  'joint saved': projectJoints,
  'tool saved': projectTools,
  'certificate added': projectCertificates,
  'setting issued': projectSettings,
  'tightening recorded': projectTightenings,
  'breakout recorded': projectBreakouts,
  'pass recorded': projectPasses,
  'joint stepped': projectSteps,
  'deviation decided': projectDecided,
  'cycles counted': projectCycles,
  'class rule saved': projectClassRules,
  'site row saved': projectSiteRows,
  'pass plan saved': projectPlans,
  'pass plan approved': projectPlanApprovals,
  'table values confirmed': projectConfirmations,
  'tool moved': projectMoves,
  'tool checked': projectChecks,
  'checklist saved': projectChecklists,
  'tool rule saved': projectToolRules,
  'kit saved': projectKits,
  'campaign saved': projectCampaigns,
  'job saved': projectJobs,
  'attachment added': projectAttachments,
  'case opened': projectCases,
  'case decided': projectDecisions,
  'case closed': projectClosures,
  'sign-in begun': projectSignIn,
  'signed in': projectAccess,
  'sign-in failed': projectAccess,
  'locked out': projectAccess,
  'secret changed': projectAccess,
  'person roles saved': projectRoles,
  'competence saved': projectCompetences,
  'record signed': projectSignatures,
  // The file's records come as events of their own.
  'import confirmed': async () => undefined,
};

/** The same path for new events and for a rebuild, so that both end in the same columns. */
export async function project(db: Kysely<RegisterSchema>, events: readonly RecordedEvent[]): Promise<void> {
  for (const run of runsOfOneKind(events)) {
    const [first] = run;
    if (first) await (PROJECTORS[first.kind] as Projector<EventKind>)(db, run);
  }
}

function runsOfOneKind(events: readonly RecordedEvent[]): RecordedEvent[][] {
  const runs: RecordedEvent[][] = [];
  for (const event of events) {
    const run = runs.at(-1);
    if (run?.[0]?.kind === event.kind) run.push(event);
    else runs.push([event]);
  }
  return runs;
}
