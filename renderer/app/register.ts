import { createContext, useContext } from 'react';
import type { RegisterState } from '../../core/contract/register.ts';

const Register = createContext<RegisterState | null>(null);

export const RegisterProvider = Register.Provider;

/** The open register, on every page inside the frame. */
export function useRegister(): RegisterState & { readonly timeZone: string } {
  const register = useContext(Register);
  if (register === null) throw new Error('this page stands outside the register');
  return { ...register, timeZone: register.timeZone ?? 'UTC' };
}
