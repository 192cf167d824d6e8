import { certificateStanding } from '../../../core/calibration/validity.ts';
import type { TighteningData } from '../../../core/contract/event.ts';
import type { PassData } from '../../../core/contract/pass.ts';
import {
  type CalibrationOfWork,
  calibrationOfWork,
  worstCalibration,
} from '../../../core/joint/life/calibration.ts';
import { workReasons } from '../../../core/joint/life/fold.ts';
import { lacksOf } from '../../../core/joint/life/lacks.ts';
import type { WorkEvent } from '../../../core/joint/life/standing.ts';
import type { Assessment } from '../../../core/setting/assessment.ts';
import { checkValidity } from '../../../core/setting/check-certificates.ts';
import type { CardInput } from '../../../core/setting/input.ts';
import type { EventDataByKind, TighteningLife } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { passesById } from '../repositories/pass.ts';
import { classKey, nextOfClass, standingOf } from './standing.ts';

type Db = Pick<WriteContext, 'db'>;

/** What was gathered for a record of work, as far as it tells of tools and studs. */
interface Facts {
  readonly cardInput: CardInput;
  readonly assessed: Pick<Assessment, 'findings'> | null;
  readonly setting: Pick<EventDataByKind['setting issued'], 'overrides' | 'personId'> | null;
  readonly boltCount: number | null;
}

/** What a tightening means for the state of its joint, frozen with it: whole or not, by what tools, which of its class. */
export async function tighteningLife(
  { db }: Db,
  data: TighteningData,
  facts: Facts,
): Promise<TighteningLife> {
  const lacks = lacksOf(data, facts.boltCount);
  const standing = await standingOf(db, data.jointId);
  const complete = lacks.length === 0;
  const key = complete && standing.class !== null ? classKey(standing.class) : null;
  return {
    boltSets: facts.cardInput.joint.data.boltSets.length + 1,
    complete,
    lacks,
    ...worstCalibration([toolsOfWork(facts), ...(await toolsOfPasses(db, data.passIds))]),
    ordinal: key === null ? null : await nextOfClass(db, key),
    classKey: key,
  };
}

async function toolsOfPasses(db: WriteContext['db'], passIds: readonly string[]) {
  const passes = [...(await passesById(db, passIds)).values()];
  return passes.flatMap(({ data, calibration }): CalibrationOfWork[] => {
    if (calibration === null || byHand(data)) return [];
    if (calibration !== undefined) return [calibration];
    // Recorded before it was kept.
    return [{ calibration: 'not known', why: [`tools of pass ${data.pass} not known`], setAside: null }];
  });
}

const byHand = ({ dialled, torque }: PassData) => dialled === null && torque === null;

/** Calibration of the tools a pass was made with; null for one by hand. */
export function toolsOfPass(data: PassData, facts: Facts): CalibrationOfWork | null {
  return byHand(data) ? null : toolsOfWork(facts);
}

/** A tensioner's load hangs on its gauge alone; everything else is held against the checks of a setting. */
function toolsOfWork({ cardInput, assessed, setting }: Facts): CalibrationOfWork {
  const followed =
    setting === null ? null : { overrides: setting.overrides ?? [], issuedBy: setting.personId };
  if (cardInput.method !== 'tensioner') return calibrationOfWork(assessed?.findings ?? null, followed);
  const { gauge } = cardInput.set;
  if (gauge === null) return calibrationOfWork(null, followed);
  const standing = certificateStanding(gauge.certificates, cardInput.startsOn);
  return calibrationOfWork(checkValidity(cardInput, gauge, standing), followed);
}

/** Says in the record itself that it is out of order, and why. */
export async function orderFlagsOf({ db }: Db, jointId: string, event: WorkEvent): Promise<string[]> {
  const standing = await standingOf(db, jointId);
  return workReasons(standing, event).map((reason) => `out of order: ${reason}`);
}
