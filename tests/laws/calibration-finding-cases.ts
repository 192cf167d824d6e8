import type { Case } from './finding-case.ts';
import { drive, driveCertificate } from './finding-parts.ts';

/** What makes each finding about certificates, custody and dates of the job appear. */
export const CALIBRATION_CASES = {
  certificate_missing: {
    severity: 'refusal',
    change: (input) => {
      drive(input).certificates = [];
    },
  },
  certificate_lapsed: {
    severity: 'refusal',
    change: (input) => {
      driveCertificate(input).validUntil = '2026-03-15';
    },
  },
  certificate_lapses_during_job: {
    severity: 'warning',
    change: (input) => {
      driveCertificate(input).validUntil = '2026-03-16';
    },
  },
  certificate_later_than_job: {
    severity: 'refusal',
    change: (input) => {
      driveCertificate(input).calibratedOn = '2026-03-17';
    },
  },
  certificate_outside_limits: {
    severity: 'refusal',
    change: (input) => {
      driveCertificate(input).result = 'outside limits';
    },
  },
  combination_not_certified: {
    severity: 'warning',
    change: (input) => {
      driveCertificate(input).withToolIds = [];
    },
  },
  certificate_not_straight: {
    severity: 'refusal',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind !== 'pressure-torque') return;
      measured.points = measured.points.map((point, index) =>
        index === 3 ? { ...point, torque: { ...point.torque, si: point.torque.si * 1.8 } } : point,
      );
    },
  },
  reference_uncertainty_unknown: {
    severity: 'note',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.expandedUncertainty = null;
    },
  },
  above_certified_points: {
    severity: 'refusal',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.points = measured.points.slice(0, 3);
    },
  },
  below_certified_points: {
    severity: 'warning',
    change: (input) => {
      const { measured } = driveCertificate(input);
      if (measured.kind === 'pressure-torque') measured.points = measured.points.slice(4);
    },
  },
  tool_not_available: {
    severity: 'warning',
    change: (input) => {
      drive(input).data.status = 'at the laboratory';
    },
  },
  tool_barred: {
    severity: 'refusal',
    change: (input) => {
      drive(input).data.status = 'quarantined';
    },
  },
  job_ends_before_start: {
    severity: 'refusal',
    change: (input) => {
      input.endsOn = '2026-03-15';
    },
  },
} satisfies Record<string, Case>;
