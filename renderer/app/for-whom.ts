import { admission } from '../../core/access/rights.ts';
import { rolesInWords } from '../../core/access/roles.ts';
import type { RequestName } from '../../core/contract/names.ts';
import { useSignedIn } from './session.ts';

/**
 * Whom a request is for, where it is not for whoever is at the window; null where they may ask it. It only spares them
 * the work of a form: the register itself refuses.
 */
export function useForWhom(name: RequestName, input: unknown = {}): string | null {
  const person = useSignedIn();
  if (person === null) return null;
  const answer = admission(name, input, person.roles);
  return answer.is === 'refused' ? rolesInWords(answer.roles) : null;
}
