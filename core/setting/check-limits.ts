import type { Raised } from '../findings/finding.ts';
import { atJoint, raise } from '../findings/raise.ts';
import { limitsConflict } from '../joint/target.ts';
import { showNumber, showQuantity } from '../text/number.ts';
import type { Unit } from '../units/units.ts';
import type { CardInput } from './input.ts';
import type { StudStress } from './loads.ts';
import { stressUnit } from './show.ts';

/** Floating point must not refuse a stress that was entered as its own limit. */
const SLACK = 1 + 1e-9;

/**
 * Holds bolt and flange limits against the load that the dialled pressure gives, and yield.
 *
 * @param input input of the card
 * @param stress stresses of one stud, Pa, or null while the load is not known
 * @returns findings; none when nothing stands against it
 * @example checkLimits(complete, stress).length // 0
 * @source limits as entered; ASME PCC-1-2013, Appendix O (from memory)
 */
export function checkLimits(input: CardInput, stress: StudStress | null): Raised[] {
  return [
    ...conflict(input),
    ...unknownLimits(input),
    ...(stress === null ? [] : [...againstLimits(input, stress), ...againstYield(input, stress)]),
  ];
}

function about(input: CardInput, field: string) {
  const source = input.joint.data.limits.source || 'joint data';
  return { subject: input.joint.data.tag, place: atJoint(input.joint.id, field), source };
}

function conflict(input: CardInput): Raised[] {
  const { limits } = input.joint.data;
  const whose = limitsConflict(limits);
  const largest = whose === 'bolt' ? limits.boltStressMax : limits.flangeBoltStressMax;
  const least = limits.boltStressMin;
  if (whose === null || largest === null || least === null) return [];
  const unit = stressUnit(input);
  return [
    raise(
      'limits_conflict',
      () => ({
        least: showQuantity(least.si, unit),
        largest: showQuantity(largest.si, unit),
        whose,
      }),
      {
        ...about(input, 'limits'),
        severity: 'refusal',
        value: least.si,
        limit: largest.si,
        unit,
      },
    ),
  ];
}

function unknownLimits(input: CardInput): Raised[] {
  const { limits } = input.joint.data;
  const unknown: [string, string, string][] = [];
  if (limits.boltStressMax === null) {
    unknown.push(['boltStressMax', 'Largest bolt stress', 'Enter the site’s limit for this stud.']);
  }
  if (limits.boltStressMin === null) {
    unknown.push([
      'boltStressMin',
      'Least bolt stress',
      'Enter the least bolt stress that keeps the gasket tight, from the gasket’s data sheet or the site.',
    ]);
  }
  if (limits.flangeBoltStressMax === null) {
    unknown.push([
      'flangeBoltStressMax',
      'Largest bolt stress for the flange',
      'Enter the limit from the flange’s calculation.',
    ]);
  }
  return unknown.map(([field, limit, needs]) =>
    raise('limit_unknown', () => ({ limit, needs }), { ...about(input, field), severity: 'note' }),
  );
}

function againstLimits(input: CardInput, stress: StudStress): Raised[] {
  const { limits } = input.joint.data;
  const area = limits.boltStressArea;
  const value = area === 'tensile' ? stress.tensile : stress.root;
  if (value === null) return [];
  const unit = stressUnit(input);
  const facts = (limit: number) => ({
    stress: showQuantity(value, unit),
    limit: showQuantity(limit, unit),
    area,
  });
  const findings: Raised[] = [];
  const { boltStressMax, boltStressMin, flangeBoltStressMax } = limits;
  if (boltStressMax !== null && value > boltStressMax.si * SLACK) {
    findings.push(
      raise(
        'above_bolt_limit',
        () => facts(boltStressMax.si),
        refusal(input, 'boltStressMax', value, boltStressMax.si, unit),
      ),
    );
  }
  if (boltStressMin !== null && value * SLACK < boltStressMin.si) {
    findings.push(
      raise(
        'below_bolt_limit',
        () => facts(boltStressMin.si),
        refusal(input, 'boltStressMin', value, boltStressMin.si, unit),
      ),
    );
  }
  if (flangeBoltStressMax !== null && value > flangeBoltStressMax.si * SLACK) {
    findings.push(
      raise(
        'above_flange_limit',
        () => facts(flangeBoltStressMax.si),
        refusal(input, 'flangeBoltStressMax', value, flangeBoltStressMax.si, unit),
      ),
    );
  }
  return findings;
}

function refusal(input: CardInput, field: string, value: number, limit: number, unit: Unit) {
  return { ...about(input, field), severity: 'refusal' as const, value, limit, unit };
}

function againstYield(input: CardInput, stress: StudStress): Raised[] {
  const { axialOfYield, combinedElasticOfYield, combinedPlasticOfYield } = stress;
  const place = { subject: input.joint.data.tag, place: atJoint(input.joint.id, 'target') };
  const finding = (share: number, kind: 'axial' | 'combined, elastic' | 'combined, plastic') =>
    raise('above_yield', () => ({ share: `${showNumber(share * 100, 3)} %`, kind }), {
      ...place,
      severity: kind === 'combined, elastic' ? 'warning' : 'refusal',
      source: kind === 'axial' ? 'yield strength' : 'von Mises, VDI 2230-1',
      value: share,
      limit: 1,
      unit: 'percent',
    });
  if (axialOfYield !== null && axialOfYield > SLACK) return [finding(axialOfYield, 'axial')];
  if (combinedPlasticOfYield !== null && combinedPlasticOfYield > SLACK) {
    return [finding(combinedPlasticOfYield, 'combined, plastic')];
  }
  if (combinedElasticOfYield !== null && combinedElasticOfYield > SLACK) {
    return [finding(combinedElasticOfYield, 'combined, elastic')];
  }
  return [];
}
