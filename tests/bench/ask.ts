import type { RequestName } from '../../core/contract/names.ts';
import type { RequestInput, RequestOutput } from '../../core/contract/requests.ts';
import type { Service } from '../../electron/service/service.ts';

/** Sends a request that has to succeed. */
export async function askService<N extends RequestName>(
  service: Service,
  name: N,
  input: RequestInput<N>,
): Promise<RequestOutput<N>> {
  const answer = await service.handle(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.error.message}`);
  return answer.value as RequestOutput<N>;
}
