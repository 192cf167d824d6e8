import { replayOf } from '../replay/replay.ts';
import type { Read } from './handler.ts';

export const runReplay: Read<'replay.run'> = replayOf;
