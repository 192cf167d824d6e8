import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { RequestError } from '../../../core/contract/errors.ts';
import type { SignatureData } from '../../../core/contract/signature.ts';
import { send } from '../../app/send.ts';

/**
 * Sends a signature without leaving the secret anywhere: the library that other writes go through keeps what was sent
 * for as long as the page stands. The key belongs to what is signed, so that a retry is not a second signature.
 */
export function useSign(onSigned: () => void) {
  const client = useQueryClient();
  const last = useRef<{ text: string; key: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const [error, setError] = useState<RequestError | null>(null);
  const sign = async (data: SignatureData, secret: string | null) => {
    const text = JSON.stringify(data);
    if (last.current?.text !== text) last.current = { text, key: crypto.randomUUID() };
    setBusy(true);
    setError(null);
    const answer = await send('event.sign', { key: last.current.key, data, secret });
    setBusy(false);
    if (!answer.ok) {
      setError(answer.error);
      return;
    }
    last.current = null;
    onSigned();
    await client.invalidateQueries();
  };
  return { sign, busy, error };
}
