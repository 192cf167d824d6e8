import { referenceChoices } from '../../../core/reference/choices.ts';
import type { Read } from '../handlers.ts';

export const choices: Read<'reference.choices'> = async () => referenceChoices();
