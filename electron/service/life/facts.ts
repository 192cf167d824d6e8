import type { Kysely } from 'kysely';
import { certificateStanding } from '../../../core/calibration/validity.ts';
import type { StepData } from '../../../core/contract/life.ts';
import type { StepFacts } from '../../../core/joint/life/guard.ts';
import type { JointStanding } from '../../../core/joint/life/standing.ts';
import { completeness } from '../../../core/record/completeness.ts';
import type { Actor, Site } from '../context.ts';
import { assemblyRecord } from '../record/assembly.ts';
import type { RegisterSchema } from '../register/schema.ts';
import { lastTightening } from '../repositories/chart.ts';
import type { JointOnRegister } from '../repositories/joint.ts';
import { toolsWithCertificates } from '../repositories/tool.ts';
import { dateAtSite } from '../time.ts';
import { ruleOf } from './standing.ts';

interface Asked {
  readonly db: Kysely<RegisterSchema>;
  readonly site: Site;
  /** Whoever is signed in; null without sign-in. */
  readonly actor: Actor | null;
}

/** What steps of a joint are held against. The step is null while somebody only looks at what leads on. */
export async function stepFacts(
  { db, site, actor }: Asked,
  joint: JointOnRegister,
  standing: JointStanding,
  step: StepData | null,
): Promise<StepFacts> {
  const rule = await ruleOf(db, standing.class);
  const { gasket, retightening } = joint.data;
  const { procedure, from, to, gasketExcluded } = retightening;
  const type = gasket?.type ?? null;
  return {
    tag: joint.data.tag,
    rule,
    roles: actor?.roles ?? null,
    missing: rule?.completeRecord ? await missingOf({ db, site }, joint, rule.fields) : null,
    gauge: await gaugeOf({ db, site }, step),
    retightening: {
      gasketType: type,
      excludedGaskets: gasketExcluded === null ? null : gasketExcluded && type !== null ? [type] : [],
      lastTorque: (await lastTightening(db, joint.id, 0, null))?.torque ?? null,
      siteProcedure: procedure === '' ? null : procedure,
      window:
        from === null || to === null ? null : { from: from.si, to: to.si, source: procedure || 'joint data' },
    },
  };
}

type Reading = Omit<Asked, 'actor'>;

async function missingOf(
  context: Reading,
  joint: JointOnRegister,
  fields: Parameters<typeof completeness>[1],
): Promise<string[]> {
  const record = await assemblyRecord(context, joint, null);
  return completeness(record, fields)
    .fields.filter(({ required, state }) => required && state === 'missing')
    .map(({ field }) => field);
}

/** A gauge of the register by its certificate on the day; another one by the date that was read off it. */
async function gaugeOf({ db, site }: Reading, step: StepData | null): Promise<StepFacts['gauge']> {
  if (step?.step !== 'test') return 'not known';
  const { gaugeToolId, gaugeDueOn } = step.evidence;
  const day = dateAtSite(step.happenedAt, site.timeZone);
  if (gaugeToolId === null) {
    if (gaugeDueOn === null) return 'not known';
    return gaugeDueOn < day ? 'not in date' : 'in date';
  }
  const [tool] = await toolsWithCertificates(db, { ids: [gaugeToolId] });
  if (tool === undefined) return 'not known';
  const standing = certificateStanding(tool.certificates, day);
  if (standing.state === 'none') return 'not known';
  const fine = standing.state === 'in force' && standing.certificate.data.result !== 'outside limits';
  return fine ? 'in date' : 'not in date';
}
