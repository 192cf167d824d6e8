import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { findNut } from '../../core/bolting/nut.ts';
import { HALF_DIAMETER, studSections } from '../../core/bolting/stiffness.ts';
import { stripAreas } from '../../core/bolting/strip.ts';
import { unifiedThread } from '../../core/bolting/thread.ts';
import { threadLimits } from '../../core/bolting/thread-limits.ts';
import { weightedLine } from '../../core/calibration/weighted-line.ts';
import { jobData } from '../../core/contract/campaign.ts';
import { scatterInput } from '../../core/contract/scatter.ts';
import { componentData, jointGaskets } from '../../core/joint/gaskets.ts';
import { identityOf } from '../../core/joint/identity.ts';
import { resolveJoint } from '../../core/joint/resolve.ts';
import { findPlan } from '../../core/sequence/plans.ts';
import { basisOf } from '../../core/setting/basis.ts';
import { settingCard } from '../../core/setting/card.ts';
import { hydraulicsOf } from '../../core/setting/hydraulics.ts';
import { loadGasket } from '../../core/setting/loaded-gasket.ts';
import { studStress } from '../../core/setting/loads.ts';
import { ratedParts } from '../../core/tools/rating.ts';
import { completeInput } from '../laws/complete-input.ts';
import { JOINT_B } from '../laws/scatter-joints.ts';
import { workedJointA } from '../truth/worked-joint-a.ts';
import { projectFiles } from './files.ts';

/** Bolt load of worked joint A, N. */
const LOAD = 107829;

type Scope = Readonly<Record<string, unknown>>;

function hash(...parts: readonly (Uint8Array | string)[]): Uint8Array {
  const digest = createHash('sha256');
  for (const part of parts) digest.update(part);
  return new Uint8Array(digest.digest());
}

/** What examples may speak of beside the functions of core: worked joint A, a complete input, and what is made of them. */
function values(): Scope {
  const input = workedJointA();
  const complete = completeInput('tightening');
  const { data } = input.joint;
  const whole = resolveJoint(complete.joint.data);
  const fullBasis = basisOf(complete);
  const root = whole.thread?.value.rootArea;
  const [gasket] = jointGaskets(complete.joint.data);
  const thread = unifiedThread(0.875, 9);
  const hydraulics = hydraulicsOf(input);
  const id = '00000000-0000-4000-8000-000000000001';
  return {
    job: jobData.parse({ campaignId: id, number: 'N-1', jointId: id, scope: 'break' }),
    sha256: hash,
    ringJoint: JOINT_B,
    scatterData: scatterInput.parse({
      jointId: id,
      planIds: ['staged-thirds'],
    }),
    input,
    data,
    set: input.set,
    joint: resolveJoint(data),
    basis: basisOf(input),
    hydraulics,
    line: hydraulics.line,
    fitted: weightedLine([1, 3.2, 4.8, 7].map((y, x) => ({ x, y, u: null }))).value,
    certificate: input.set.drive?.certificates[0]?.data,
    card: settingCard(input),
    thread,
    nut: findNut('ASME B18.2.2 heavy hex', thread),
    limits: threadLimits(thread),
    areas: stripAreas(thread, 0.022).value,
    sections: studSections(thread, 0.083, null, HALF_DIAMETER).value,
    complete,
    gasket,
    loosening: completeInput('breakout'),
    stress: studStress(fullBasis, LOAD),
    loaded:
      gasket === undefined || root === undefined
        ? undefined
        : loadGasket(complete, fullBasis, gasket, LOAD, LOAD / root),
    component: gasket === undefined ? undefined : componentData(complete.joint.data, whole, gasket),
    parts: ratedParts(input.set),
    plan: findPlan('staged-thirds'),
    seen: {
      id: 'seen',
      tag: 'J-0001',
      unitId: data.unitId,
      unitName: 'Unit 100',
      service: 'steam',
      flange: 'NPS 8 Class 300',
      bolting: '12 × 7/8-9 UNC',
      location: '',
      identity: identityOf(data),
      isolated: null,
    },
  };
}

/** Every export of core by its name; one that two modules give differently is left to the module that it stands in. */
export async function coreExports(root: string): Promise<{ shared: Scope; of: (file: string) => Scope }> {
  const modules = new Map<string, Scope>();
  for (const file of await projectFiles(root, /^core\/(?!contract\/).*(?<!\.test)\.ts$/)) {
    modules.set(file, (await import(pathToFileURL(join(root, file)).href)) as Scope);
  }
  const owners = new Map<string, Set<unknown>>();
  for (const module of modules.values()) {
    for (const [name, value] of Object.entries(module)) {
      owners.set(name, (owners.get(name) ?? new Set()).add(value));
    }
  }
  const shared = Object.fromEntries(
    [...owners].filter(([, seen]) => seen.size === 1).map(([name, [value]]) => [name, value]),
  );
  return { shared: { ...shared, ...values() }, of: (file) => modules.get(file) ?? {} };
}

/** Evaluates an example's expression with these names; names it does not use are left out. */
export function evaluate(expression: string, scope: Scope): unknown {
  const names = Object.keys(scope).filter((name) => new RegExp(`\\b${name}\\b`).test(expression));
  const run = new Function(...names, `'use strict'; return (${expression});`) as (
    ...given: unknown[]
  ) => unknown;
  return run(...names.map((name) => scope[name]));
}
