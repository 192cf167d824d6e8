import type { ToolRuleData } from '../../../core/contract/check.ts';
import { CERTIFIED } from '../../../core/tools/certified.ts';
import { counted, unitLabel } from '../../app/text/number.ts';

/** "365 days or 400 uses"; what a rule leaves open asks nothing and says so. */
export function certificateRule(data: ToolRuleData): string {
  const { certificateDays, certificateUses } = data;
  const parts = [
    ...(certificateDays === null ? [] : [counted(certificateDays, 'day')]),
    ...(certificateUses === null ? [] : [counted(certificateUses, 'use')]),
  ];
  if (parts.length > 0) return parts.join(' or ');
  return CERTIFIED.includes(data.class) ? 'to its own last day' : 'none asked for';
}

/** Rules that only some classes have. */
export function furtherRules(data: ToolRuleData): string[] {
  const { hoseAgeMonths, hoseUseMonths, hoseTestMonths, hoseTestFactor, lineAgreement } = data;
  const at = hoseTestFactor === null ? '' : ` at ${hoseTestFactor} × rated pressure`;
  return [
    ...(hoseAgeMonths === null ? [] : [`age ${counted(hoseAgeMonths, 'month')}, storage included`]),
    ...(hoseUseMonths === null ? [] : [`in use ${counted(hoseUseMonths, 'month')}`]),
    ...(hoseTestMonths === null ? [] : [`pressure test every ${counted(hoseTestMonths, 'month')}${at}`]),
    ...(lineAgreement === null
      ? []
      : [`lines on one pump within ${lineAgreement.text} ${unitLabel(lineAgreement.unit)}`.trim()]),
  ];
}
