import { mayOverride } from '../../../core/access/overrides.ts';
import { hasOneOf, rolesInWords } from '../../../core/access/roles.ts';
import type { Override } from '../../../core/contract/access.ts';
import type { SettingCard } from '../../../core/contract/setting.ts';
import type { Finding } from '../../../core/findings/finding.ts';
import type { SetAside } from '../chain/events.ts';
import type { WriteContext } from '../context.ts';
import { invalidField, RequestFailure } from '../failure.ts';
import { checkDistinct } from './distinct.ts';

/** Refusals that somebody entitled to it sets aside; whatever refusal is left blocks the setting. */
export function refusalsSetAside(
  { actor }: Pick<WriteContext, 'actor'>,
  card: SettingCard,
  overrides: readonly Override[],
): SetAside[] {
  const refusals = card.findings.filter(({ severity }) => severity === 'refusal');
  checkDistinct(
    'overrides',
    overrides.map(({ code }) => code),
  );
  const aside = overrides.map(({ code, reason }, index): SetAside => {
    const findings = refusals.filter((finding) => finding.code === code);
    const field = `overrides.${index}.code`;
    if (findings.length === 0) throw invalidField(field, code, 'a refusal that stands against this setting');
    checkMay(actor, field, findings);
    return {
      code,
      reason,
      findings: findings.map(({ subject, title, detail }) => ({ subject, title, detail })),
    };
  });
  const left = refusals.filter(({ code }) => !aside.some((one) => one.code === code));
  if (left.length === 0) return aside;
  throw new RequestFailure(
    'refused',
    `The setting can not be issued: ${left.map(({ title }) => title).join('; ')}`,
    left.map(({ code, detail, remedy }) => ({ field: code, value: detail, allowed: remedy })),
  );
}

function checkMay(actor: WriteContext['actor'], field: string, findings: readonly Finding[]): void {
  const [finding] = findings;
  if (finding === undefined) return;
  const { code, title, remedy } = finding;
  const may = mayOverride(code);
  if (may === null) {
    throw new RequestFailure('refused', `Nobody may override this: ${title}`, [
      { field, value: title, allowed: remedy },
    ]);
  }
  const roles = rolesInWords(may.roles);
  if (actor === null) {
    throw new RequestFailure(
      'refused',
      'Without sign-in nobody overrides a refusal: who it was would be a claim',
      [{ field, value: title, allowed: `an override by ${roles} who is signed in` }],
    );
  }
  if (hasOneOf(actor.roles, may.roles)) return;
  throw new RequestFailure('refused', `This is overridden by ${roles} alone: ${title}`, [
    { field: 'role', value: actor.roles.join(', '), allowed: roles },
  ]);
}
