import type { ToolSummary } from '../../core/contract/tool.ts';
import { useRegister } from '../app/register.ts';
import { day } from '../app/text/time.ts';

type Valid = Pick<ToolSummary, 'validUntil' | 'needsCertificate'>;

export function validityWords(tool: Valid, today: string): string {
  if (tool.validUntil === null) return tool.needsCertificate ? 'no certificate' : 'needs none';
  return tool.validUntil < today ? `lapsed ${day(tool.validUntil)}` : `valid to ${day(tool.validUntil)}`;
}

/** How the tool's newest certificate stands today; what stands against a job is said on its setting. */
export function Validity({ tool }: { readonly tool: Valid }) {
  const { today } = useRegister();
  const against = tool.validUntil === null ? tool.needsCertificate : tool.validUntil < today;
  return <span className={against ? 'flag' : undefined}>{validityWords(tool, today)}</span>;
}
