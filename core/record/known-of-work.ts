import type { PassData } from '../contract/pass.ts';
import { showEntered } from '../text/number.ts';
import { answered, countOf, listed, shown, words } from './answers.ts';
import type { FIELDS_OF_WORK } from './fields-of-work.ts';
import type { Known } from './known-of-joint.ts';
import type { AssemblyRecord } from './record.ts';

export const KNOWN_OF_WORK: Known<keyof typeof FIELDS_OF_WORK> = {
  'last break': ({ breakout, steps }) => breakout?.on ?? steps.break?.lastBrokenOn ?? null,
  'permit of the break': ({ steps }) =>
    words(steps.break?.permitRef ?? '') ?? words(steps.release?.permitRef ?? ''),
  'isolation of the break': ({ steps }) =>
    words(steps.break?.isolationRef ?? '') ??
    words(steps.release?.isolationRef ?? '') ??
    words(steps.isolate?.isolationRef ?? ''),
  // Whichever of the two says no counts: a proof that failed is not undone by an earlier one.
  'zero energy proven': ({ steps }) => {
    const said = [steps.release?.zeroEnergyProven, steps.break?.zeroEnergyProven];
    if (said.includes('no')) return 'no';
    return said.includes('yes') ? 'yes' : null;
  },
  'identity checks': ({ steps }) => {
    const checks = steps.release?.identityChecks ?? [];
    return checks.length < 2 ? null : `${checks.length} persons`;
  },
  'breakout per bolt': ({ breakout, resolved }) => {
    if (breakout === null || resolved.boltCount === null) return null;
    const read = breakout.data.readings.filter(
      ({ torque, dialled, outcome }) => torque !== null || dialled !== null || outcome !== 'turned',
    );
    return read.length < resolved.boltCount ? null : `${read.length} bolts`;
  },
  'first movement': ({ steps }) => {
    const moved = steps.break?.firstMovement ?? null;
    return moved === null ? null : countOf(moved.length, 'bolt');
  },
  'seized or cut bolts': ({ breakout, steps, resolved }) => {
    const { seizedBolts = null, cutBolts = null } = steps.break ?? {};
    if (seizedBolts !== null && cutBolts !== null) {
      return listed([...new Set([...seizedBolts, ...cutBolts])].toSorted((a, b) => a - b));
    }
    if (breakout === null || resolved.boltCount === null) return null;
    const { readings } = breakout.data;
    if (readings.length < resolved.boltCount) return null;
    return listed(readings.filter(({ outcome }) => outcome !== 'turned').map(({ bolt }) => bolt));
  },
  'gap at the break': ({ steps }) => gaps(steps.break?.gaps ?? null),
  'flange spring': ({ steps }) => shown(steps.break?.flangeSpring ?? null),
  residue: ({ steps }) => answered(steps.break?.residue, steps.break?.residueFound || 'found', 'none'),

  'face condition': ({ steps }) => verdicts(steps.inspect?.faces ?? null),
  'face flatness': ({ steps }) => {
    const faces = steps.inspect?.faces ?? [];
    const measured = faces.flatMap(({ flatness }) => (flatness === null ? [] : [showEntered(flatness)]));
    return faces.length === 0 || measured.length < faces.length ? null : measured.join(', ');
  },
  'stud condition by hand': ({ steps }) =>
    answered(steps.inspect?.studs.runsByHand, 'runs by hand', 'does not'),
  'nut bearing face': ({ steps }) => verdict(steps.inspect?.studs.nutFace),
  'alignment gap': ({ steps }) => {
    const { axialGap = null, parallelism = null } = steps.inspect?.alignment ?? {};
    if (axialGap === null || parallelism === null) return null;
    return `${showEntered(axialGap)}, ${showEntered(parallelism)} out of parallel`;
  },
  'alignment offset': ({ steps }) => shown(steps.inspect?.alignment.offset ?? null),
  'force to align': ({ steps }) => {
    const { forceNeeded, force = null } = steps.inspect?.alignment ?? {};
    if (forceNeeded === 'yes') return shown(force);
    return answered(forceNeeded, '', 'none');
  },

  'gasket new': ({ steps }) => {
    const condition = steps['make up']?.gasket.condition ?? 'not known';
    return condition === 'not known' ? null : condition;
  },
  'gasket identity': ({ steps }) => words(steps['make up']?.gasket.identity ?? ''),
  'lubricant class': ({ steps }) => words(steps['make up']?.lubricant.productClass ?? ''),
  'lubricant batch': (record) =>
    words(record.steps['make up']?.lubricant.batch ?? '') ?? lubricantBatch(record),
  'lubricant applied to': ({ steps }) => listed(steps['make up']?.lubricant.appliedTo ?? null),
  'snug torque': ({ steps }) => shown(steps['make up']?.snugTorque ?? null),
  'thread engagement': ({ steps }) => answered(steps['make up']?.fullEngagement, 'full on all', 'not full'),
  'turned sides': ({ steps }) => {
    const sides = steps['make up']?.turnedSides ?? 'not known';
    return sides === 'not known' ? null : sides;
  },

  'tightening method': ({ tightening }) => tightening?.data.method ?? null,
  'tool set': ({ tightening }) => tightening && toolSet(tightening.data),
  'tools in date': ({ tightening }) => {
    if (tightening === null || toolSet(tightening.data) === null) return null;
    const against = tightening.flags.filter((flag) => flag.startsWith('refusal: '));
    return against.length === 0 ? 'nothing against them at the time of use' : against.join('; ');
  },
  'set-point per pass': ({ passes }) =>
    passes.length > 0 && passes.every(setOf)
      ? passes.map((pass) => `${pass.name}: ${setOf(pass)}`).join('; ')
      : null,
  'order of bolts': ({ passes }) =>
    passes.length === 0 ? null : `as turned, in ${passes.length} recorded parts`,
  'reading per bolt': ({ passes, resolved }) => {
    const read = new Set(passes.flatMap(({ readings }) => readings.map(({ bolt }) => bolt)));
    return resolved.boltCount !== null && read.size >= resolved.boltCount ? `${read.size} bolts` : null;
  },
  'all bolts tightened': ({ tightening, resolved }) => {
    if (tightening === null || resolved.boltCount === null) return null;
    return `${tightening.data.boltsTightened} of ${resolved.boltCount}`;
  },
  'no further turn': ({ tightening }) =>
    tightening && (tightening.data.finalPassNoTurn ? 'confirmed' : 'not confirmed'),
  'start and stop': ({ passes }) => {
    const [first] = passes;
    const last = passes.at(-1);
    return first && last ? `${first.startedAt} to ${last.endedAt}` : null;
  },
  'ambient temperature': ({ steps }) =>
    shown(steps['relaxation pass']?.ambientTemperature ?? null) ??
    shown(steps.test?.ambientTemperature ?? null),

  'setting read by a second person': ({ passes, steps }) => {
    if (passes.length > 0 && passes.every(({ confirmedBy }) => confirmedBy !== null)) return 'in every pass';
    const { settingSeen, settingSeenBy = null } = steps.witness ?? {};
    if (settingSeen === 'no') return 'no';
    return settingSeen === 'yes' && settingSeenBy !== null ? 'yes' : null;
  },
  'load measured': ({ steps }) => {
    const measured = steps.witness?.loadMeasurement ?? null;
    return measured === null ? null : `${measured.method}, ${countOf(measured.readings.length, 'bolt')}`;
  },
  'relaxation pass': ({ steps }) => {
    const { dwell = null, rotation = null } = steps['relaxation pass'] ?? {};
    if (dwell === null || rotation === null) return null;
    return `after ${showEntered(dwell)}, largest turn ${showEntered(rotation)}`;
  },
  'gap after tightening': ({ steps }) => gaps(steps.witness?.gaps ?? null),
  witness: ({ steps }) => {
    const { witnessId = null, result } = steps.witness ?? {};
    return witnessId === null ? null : verdict(result);
  },

  'leak test': ({ steps }) => {
    const { result, pressure = null, hold = null } = steps.test ?? {};
    if (result === undefined || result === 'not known' || pressure === null) return null;
    return [result, `at ${showEntered(pressure)}`, hold && `for ${showEntered(hold)}`]
      .filter(Boolean)
      .join(' ');
  },
  'test gauge': ({ steps }) => {
    const { gaugeToolId = null, gauge = '', gaugeDueOn = null } = steps.test ?? {};
    if (gaugeToolId !== null) return 'of the register';
    return gauge === '' || gaugeDueOn === null ? null : `${gauge}, due ${gaugeDueOn}`;
  },
  'tags removed': ({ steps }) => answered(steps.reinstate?.tagsRemoved, 'yes', 'no'),
  'guards and insulation': ({ steps }) => {
    const { guardsBack, insulationBack } = steps.reinstate ?? {};
    const guards = answered(guardsBack, 'guards back', 'guards off');
    const insulation = answered(insulationBack, 'insulation back', 'insulation off');
    return guards === null || insulation === null ? null : `${guards}, ${insulation}`;
  },
  'punch items': ({ steps }) => {
    const items = steps.reinstate?.punchItems ?? null;
    return items && listed(items.map(({ text, state }) => `${text} (${state})`));
  },
  'reinstated by': ({ reinstatedBy }) => reinstatedBy,

  assemblers: ({ tightening }) => tightening && listed(tightening.people),
  competence: ({ competence }) => competence,
  supervisor: ({ steps }) => named(steps.witness?.supervisorId),
  inspector: ({ steps }) => named(steps.inspect?.inspectorId),
  signatures: ({ signatures }) => (signatures.length === 0 ? null : signatures.join(', ')),

  'problems and solutions': ({ steps }) => learned(steps, 'problems'),
  advice: ({ steps }) => learned(steps, 'advice'),

  'recorded by': ({ tightening }) => tightening?.recordedBy ?? null,
};

const named = (personId: string | null | undefined) => (personId ? 'named' : null);

function gaps(list: readonly { at: number; gap: { text: string; unit: string } }[] | null): string | null {
  return list === null || list.length === 0 ? null : `at ${countOf(list.length, 'position')}`;
}

function verdict(said: string | undefined): string | null {
  return said === undefined || said === 'not known' ? null : said;
}

/** A face nobody gave a verdict on leaves the whole not known. */
function verdicts(faces: readonly { name: string; verdict: string }[] | null): string | null {
  if (faces === null || faces.length === 0) return null;
  if (faces.some(({ verdict: said }) => said === 'not known')) return null;
  return faces.map(({ name, verdict: said }) => `${name}: ${said}`).join('; ');
}

type Tightening = NonNullable<AssemblyRecord['tightening']>['data'];

/** A tool without pressure is named as a whole; a hydraulic set by what drives, turns, feeds and reads it. */
function toolSet({ tools, torqueTool, method }: Tightening): string | null {
  if (torqueTool !== null) return torqueTool.number;
  if (method !== 'hydraulic wrench' && method !== 'tensioner') return null;
  const parts =
    method === 'tensioner' ? [tools.pumpId, tools.gaugeId] : [tools.driveId, tools.pumpId, tools.gaugeId];
  return parts.every((part) => part !== null) ? 'named part by part' : null;
}

function setOf({ dialled, torque }: PassData): string | null {
  return shown(dialled) ?? shown(torque);
}

function lubricantBatch({ tightening }: AssemblyRecord): string | null {
  const batches = tightening?.data.batches.filter(({ kind }) => kind === 'lubricant') ?? [];
  return batches.length === 0 ? null : batches.map(({ number }) => number).join(', ');
}

/** Any step of the work may say it. */
function learned(steps: AssemblyRecord['steps'], what: 'problems' | 'advice'): string | null {
  const said = Object.values(steps).flatMap((step) => words(step?.[what] ?? '') ?? []);
  return said.length === 0 ? null : said.join('; ');
}
